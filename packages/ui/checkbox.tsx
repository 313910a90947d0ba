'use client'
import { type InputHTMLAttributes, type ReactNode, useId } from 'react'
import { FieldError } from './field.tsx'

export type CheckboxProps = Omit<InputHTMLAttributes<HTMLInputElement>, 'className' | 'type'> & {
  label: ReactNode
  hideLabel?: boolean
  hint?: ReactNode
  error?: ReactNode
  /** Some, but not all, of what it stands for is ticked. */
  partly?: boolean
}

/** A checkbox whose whole line is the target: at least a control high on the tablet, 24 px in the office. */
export function Checkbox({ label, hideLabel, hint, error, partly = false, id, ...rest }: CheckboxProps) {
  const made = useId()
  const own = id ?? made
  const described = [hint ? `${own}-hint` : '', error ? `${own}-error` : ''].filter(Boolean).join(' ')
  return (
    <div className="flex flex-col">
      <label htmlFor={own} className="inline-flex min-h-7 min-w-6 items-center gap-2.5 in-[.field]:min-h-control in-[.field]:min-w-control">
        <input
          {...rest}
          id={own}
          type="checkbox"
          ref={(box) => {
            if (box) box.indeterminate = partly
          }}
          aria-describedby={described || undefined}
          aria-invalid={error ? true : undefined}
          className="size-4.5 shrink-0 accent-ink in-[.field]:size-6"
        />
        <span className={hideLabel ? 'sr-only' : ''}>{label}</span>
      </label>
      {hint ? (
        <span id={`${own}-hint`} className="pl-7 text-small text-soft">
          {hint}
        </span>
      ) : null}
      {error ? <FieldError id={`${own}-error`}>{error}</FieldError> : null}
    </div>
  )
}
