'use client'
import { useWords } from '@almanac/words/use-words'
import { type ReactNode, useEffect, useId, useRef } from 'react'
import { createPortal } from 'react-dom'
import { CloseMark } from './marks.tsx'

export type DialogProps = {
  open: boolean
  /** Called by Escape, by the close button and by a press outside. */
  onClose: () => void
  title: ReactNode
  children: ReactNode
  /** Buttons at the foot, the main one last. */
  actions?: ReactNode
  /** `middle` asks something; `margin` is a note along the right edge (the foot, on a phone). */
  place?: 'middle' | 'margin'
}

const places = {
  middle: 'm-auto w-[min(36rem,calc(100vw-2rem))] border max-h-[calc(100dvh-2rem)]',
  margin:
    'mt-auto mb-0 w-full max-w-full border-t max-h-[85dvh] sm:my-0 sm:mr-0 sm:ml-auto sm:h-dvh sm:max-h-dvh sm:w-[27rem] sm:border-t-0 sm:border-l',
}

/** A modal dialog on the native element: focus stays inside, Escape closes, and focus returns to where it was. */
export function Dialog({ open, onClose, title, children, actions, place = 'middle' }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null)
  const words = useWords('common')
  const id = useId()
  const opener = useRef<Element | null>(null)
  useEffect(() => {
    const dialog = ref.current
    if (!open || !dialog) return
    if (!dialog.open) {
      opener.current = document.activeElement
      // Standing in the body, the dialog lies outside the tablet's wrapper and has to take its larger type along.
      if (opener.current?.closest('.field')) dialog.classList.add('field')
      dialog.showModal()
    }
    return () => {
      // The element goes away with the dialog, so the browser has no chance to give the focus back by itself.
      if (!dialog.isConnected && opener.current instanceof HTMLElement) opener.current.focus()
    }
  }, [open])
  if (!open) return null
  // In the body, because a dialog asked for from within a paragraph may not stand inside it.
  return createPortal(
    <dialog
      ref={ref}
      aria-labelledby={id}
      onClose={onClose}
      onCancel={(event) => {
        event.preventDefault()
        onClose()
      }}
      onPointerDown={(event) => {
        if (event.target === ref.current) onClose()
      }}
      className={`border-ink bg-sheet p-0 text-base text-ink backdrop:bg-shade ${places[place]}`}
    >
      <div className="flex min-h-full flex-col">
        <div className="sticky top-0 flex items-center justify-between gap-4 border-b border-line bg-sheet px-5 py-3">
          <h2 id={id} className="text-h2 font-semibold">
            {title}
          </h2>
          <button
            type="button"
            onClick={onClose}
            aria-label={words('close')}
            className="-mr-2 flex size-10 shrink-0 in-[.field]:size-13 items-center justify-center hover:bg-wash"
          >
            <CloseMark />
          </button>
        </div>
        <div className="grow px-5 py-4">{children}</div>
        {actions ? (
          <div className="sticky bottom-0 flex flex-wrap justify-end gap-3 border-t border-line bg-sheet px-5 py-3">{actions}</div>
        ) : null}
      </div>
    </dialog>,
    document.body,
  )
}
