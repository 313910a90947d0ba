'use client'
import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from 'react'

export type FoldOutProps = {
  /** What the button shows. */
  label: ReactNode
  /** Read instead of what the button shows, where that is a picture. */
  name?: string
  /** The button's looks. */
  className?: string
  /** The looks of what folds out: `under` hangs below the button, `across` spans the nearest positioned box. */
  place?: 'under' | 'across'
  children: ReactNode
}

const places = {
  under: 'top-full right-0 mt-px w-64 max-w-[calc(100vw-2rem)] border p-2',
  across: 'inset-x-0 top-full border-b px-4 py-3 sm:px-9',
}

/**
 * A button that folds out what stands behind it: links, or a few small actions. Escape folds it in and gives the focus back; so do a press elsewhere, following a
 * link and leaving by Tab. Links stay links, so there is no menu role to learn.
 */
export function FoldOut({ label, name, className = '', place = 'under', children }: FoldOutProps) {
  const [open, setOpen] = useState(false)
  const id = useId()
  const box = useRef<HTMLDivElement>(null)
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    if (!open) return
    const outside = (event: PointerEvent) => {
      if (!box.current?.contains(event.target as Node)) setOpen(false)
    }
    document.addEventListener('pointerdown', outside)
    return () => document.removeEventListener('pointerdown', outside)
  }, [open])
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !open) return
    event.stopPropagation()
    setOpen(false)
    button.current?.focus()
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys and focus of the button and the links inside pass by here
    <div
      ref={box}
      className={place === 'under' ? 'relative flex' : 'flex'}
      onKeyDown={onKeyDown}
      onBlur={(event) => {
        if (event.relatedTarget && !event.currentTarget.contains(event.relatedTarget)) setOpen(false)
      }}
    >
      <button
        ref={button}
        type="button"
        aria-label={name}
        aria-expanded={open}
        aria-controls={open ? id : undefined}
        className={className}
        onClick={() => setOpen(!open)}
      >
        {label}
      </button>
      {open ? (
        // biome-ignore lint/a11y/noStaticElementInteractions lint/a11y/useKeyWithClickEvents: following a link or button inside folds it in; they take the key themselves
        <div
          id={id}
          className={`absolute z-20 border-ink bg-sheet text-base text-ink ${places[place]}`}
          onClick={(event) => {
            if ((event.target as Element).closest('a, button')) setOpen(false)
          }}
        >
          {children}
        </div>
      ) : null}
    </div>
  )
}
