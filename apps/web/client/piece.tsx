'use client'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { useWords } from '@almanac/words/use-words'
import { type ComponentType, type ReactNode, useEffect, useState } from 'react'

/** A component that is left out of its page's scripts until it is shown or brought. */
export type PieceOf<Props extends object> = { bring: () => Promise<void>; held: () => ComponentType<Props> | null }

/** Makes a piece of what `load` imports; `<Piece of={…}>` shows it. */
export function piece<Props extends object>(load: () => Promise<ComponentType<Props>>): PieceOf<Props> {
  let part: ComponentType<Props> | null = null
  return {
    bring: async () => {
      part ??= await load()
    },
    held: () => part,
  }
}

/** So long after a page was shown it fetches its other pieces, whatever becomes of the signal. */
const BRING_AFTER_MS = 3000

/** Brings a page's pieces once its first picture stands. `pieces` is always the same list. */
export function useBrought(pieces: readonly { bring: () => Promise<void> }[]): void {
  useEffect(() => {
    const later = setTimeout(() => {
      for (const one of pieces) void one.bring().catch(() => {})
    }, BRING_AFTER_MS)
    return () => clearTimeout(later)
  }, [pieces])
}

/** What a page does beside its first picture: its children come once that stands. */
export function Afterwards({ children }: { children: ReactNode }) {
  const [due, setDue] = useState(false)
  useEffect(() => {
    const later = setTimeout(() => setDue(true), BRING_AFTER_MS)
    return () => clearTimeout(later)
  }, [])
  return due ? children : null
}

type ShownProps<Props extends object> = {
  of: PieceOf<Props>
  /** What it is given. */
  give: Props
  /** What stands in its place until it is here. */
  meanwhile?: ReactNode
}

/**
 * Shows a piece, so that a page's first picture waits for less. The field's service worker keeps every piece of the field's pages (apps/web/field-worker): without signal it
 * is there too. Where one does not come it says so, and a press loads the page again: what was typed lies on the device.
 */
export function Piece<Props extends object>({ of, give, meanwhile = <Skeleton /> }: ShownProps<Props>) {
  const words = useWords('failure')
  // Which piece it was: another may come to stand in the same place, and would not be shown when it is here.
  const [failed, setFailed] = useState<PieceOf<Props> | null>(null)
  const [, setBrought] = useState<PieceOf<Props> | null>(null)
  useEffect(() => {
    let left = false
    of.bring().then(
      () => left || setBrought(of),
      () => left || setFailed(of),
    )
    return () => {
      left = true
    }
  }, [of])
  const Part = of.held()
  if (Part) return <Part {...give} />
  return failed === of ? <Problem happened={words('unreachable')} onRetry={() => location.reload()} /> : meanwhile
}
