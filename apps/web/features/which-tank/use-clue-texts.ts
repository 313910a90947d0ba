'use client'
import { usePathname, useSearchParams } from 'next/navigation'
import { useState } from 'react'
import { type ClueTexts, searchOfTexts, type TapeUnit, textsOfSearch } from './clue-texts.ts'

/** What is typed, kept in the address as well, so that it can be sent to somebody and survives a reload. */
export function useClueTexts(usual: TapeUnit): [ClueTexts, (change: Partial<ClueTexts>) => void] {
  const search = useSearchParams()
  const path = usePathname()
  const [texts, setTexts] = useState(() => textsOfSearch(new URLSearchParams(search), usual))
  return [
    texts,
    (change) => {
      const next = { ...texts, ...change }
      setTexts(next)
      const query = searchOfTexts({ ...next, unit: next.unit }, new URLSearchParams(window.location.search))
      window.history.replaceState(null, '', query ? `${path}?${query}` : path)
    },
  ]
}
