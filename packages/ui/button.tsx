'use client'
import type { ButtonHTMLAttributes, MouseEvent, ReactNode } from 'react'
import { type ButtonKind, buttonClass } from './button-class.ts'

export type ButtonProps = Omit<ButtonHTMLAttributes<HTMLButtonElement>, 'className'> & {
  kind?: ButtonKind
  /** Work is under way: the button keeps its focus, says so, and ignores further presses. */
  busy?: boolean
  /** What to say while busy; without it the label stays. */
  busyLabel?: ReactNode
  /** Fill the width of the column. */
  wide?: boolean
}

/** A button. `type` is `button` unless told otherwise, so that none submits a form by accident. */
export function Button({ kind = 'line', busy = false, busyLabel, wide, type = 'button', onClick, children, ...rest }: ButtonProps) {
  const press = (event: MouseEvent<HTMLButtonElement>) => {
    if (busy) event.preventDefault()
    else onClick?.(event)
  }
  return (
    <button
      {...rest}
      type={type}
      aria-busy={busy || undefined}
      aria-disabled={busy || undefined}
      onClick={press}
      className={buttonClass(kind, wide)}
    >
      {busy ? (
        <svg aria-hidden="true" width="12" height="12" viewBox="0 0 12 12" className="shrink-0 animate-spin motion-reduce:animate-none">
          <path d="M6 1 a5 5 0 1 1 -5 5" fill="none" stroke="currentColor" strokeWidth="2" />
        </svg>
      ) : null}
      {busy && busyLabel ? busyLabel : children}
    </button>
  )
}
