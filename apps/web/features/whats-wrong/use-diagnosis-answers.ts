'use client'
import { usePathname, useSearchParams } from 'next/navigation'
import { useState } from 'react'
import { answersOfSearch, type DiagnosisAnswers, searchOfAnswers } from './answers.ts'

/** What was answered, kept in the address as well, so that it can be handed to whoever goes there. */
export function useDiagnosisAnswers(): [DiagnosisAnswers, (told: DiagnosisAnswers) => void] {
  const search = useSearchParams()
  const path = usePathname()
  const [told, setTold] = useState(() => answersOfSearch(new URLSearchParams(search)))
  return [
    told,
    (next) => {
      setTold(next)
      const query = searchOfAnswers(next, new URLSearchParams(window.location.search))
      window.history.replaceState(null, '', query ? `${path}?${query}` : path)
    },
  ]
}
