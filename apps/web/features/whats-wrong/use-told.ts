'use client'
import { usePathname, useSearchParams } from 'next/navigation'
import { useState } from 'react'
import { searchOfTold, type Told, toldOfSearch } from './answers.ts'

/** What was answered, kept in the address as well, so that it can be handed to whoever goes there. */
export function useTold(): [Told, (told: Told) => void] {
  const search = useSearchParams()
  const path = usePathname()
  const [told, setTold] = useState(() => toldOfSearch(new URLSearchParams(search)))
  return [
    told,
    (next) => {
      setTold(next)
      const query = searchOfTold(next, new URLSearchParams(window.location.search))
      window.history.replaceState(null, '', query ? `${path}?${query}` : path)
    },
  ]
}
