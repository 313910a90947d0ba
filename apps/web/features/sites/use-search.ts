import { useEffect, useRef, useState } from 'react'

/** How long to wait after a key before looking, ms: long enough that a word typed fast is looked up once. */
const PAUSE_MS = 150
/** Where the tab's history keeps the search of this entry. */
const KEPT = 'almanacSearch'

/**
 * What is searched for; the box answers at once, the look-up a moment later. Kept with the tab's history, so that one can come back to it, and not in the
 * address: names and telephones would stand in the logs of every proxy on the way.
 */
export function useSearch(): { text: string; searched: string; type: (text: string) => void } {
  const [text, setText] = useState('')
  const [searched, setSearched] = useState('')
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined)
  useEffect(() => {
    const kept: unknown = window.history.state?.[KEPT]
    if (typeof kept === 'string') {
      setText(kept)
      setSearched(kept)
    }
    return () => clearTimeout(waiting.current)
  }, [])
  const type = (next: string) => {
    setText(next)
    clearTimeout(waiting.current)
    waiting.current = setTimeout(() => {
      const q = next.trim()
      setSearched(q)
      window.history.replaceState({ ...window.history.state, [KEPT]: q }, '')
    }, PAUSE_MS)
  }
  return { text, searched, type }
}
