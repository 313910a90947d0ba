'use client'
import { useWords } from '@almanac/words/use-words'
import { createContext, type ReactNode, useCallback, useContext, useMemo, useRef, useState } from 'react'
import { Shape } from './shape.tsx'

/** A short message after something was done. With `undo` it stays until closed, for undo must not run away. */
export type ToastMessage = { text: ReactNode; undo?: () => void; kind?: 'done' | 'failed' }

type Kept = ToastMessage & { id: number }

const ToastContext = createContext<(said: ToastMessage) => void>(() => {})

/** Says a short message at the foot of the page: `const showToast = useToast(); showToast({ text: 'Placed at 10:25', undo })`. */
export const useToast = () => useContext(ToastContext)

const shownMs = 8000

/** Holds the messages and the region that speaks them. Stands once, around the pages. */
export function ToastProvider({ children }: { children: ReactNode }) {
  const [kept, setKept] = useState<readonly Kept[]>([])
  const nextId = useRef(1)
  const words = useWords('common')
  const close = useCallback((id: number) => setKept((all) => all.filter((t) => t.id !== id)), [])
  const showToast = useCallback(
    (said: ToastMessage) => {
      const id = nextId.current++
      // Three at most: older ones have been read or will not be.
      setKept((all) => [...all.slice(-2), { ...said, id }])
      if (!said.undo && said.kind !== 'failed') setTimeout(() => close(id), shownMs)
    },
    [close],
  )
  const shown = useMemo(
    () =>
      kept.map((t) => (
        <div key={t.id} className="flex items-center gap-3 rounded-sheet border border-ink bg-ink py-1.5 pr-1.5 pl-4 text-paper">
          <Shape name={t.kind === 'failed' ? 'triangle' : 'tick'} />
          <span className="grow">{t.text}</span>
          {t.undo ? (
            <button
              type="button"
              className="min-h-9 rounded-sheet border border-paper px-3 font-semibold outline-paper in-[.field]:min-h-12"
              onClick={() => {
                t.undo?.()
                close(t.id)
              }}
            >
              {words('undo')}
            </button>
          ) : null}
          <button
            type="button"
            aria-label={words('closeMessage')}
            className="size-9 outline-paper in-[.field]:size-12"
            onClick={() => close(t.id)}
          >
            <Shape name="cross" />
          </button>
        </div>
      )),
    [kept, close, words],
  )
  return (
    <ToastContext value={showToast}>
      {children}
      <output
        aria-live="polite"
        className="pointer-events-none fixed inset-x-4 bottom-4 z-20 flex flex-col items-center gap-2 *:pointer-events-auto"
      >
        {shown}
      </output>
    </ToastContext>
  )
}
