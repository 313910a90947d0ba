'use client'
import { useCallback, useEffect, useState } from 'react'
import { useSession } from '@/client/providers'
import { type Draft, emptyDraft } from './draft.ts'
import { readDraft } from './read-draft.ts'

/** Where a draft is kept: under company, person and visit, so that nobody sends another's. */
const keyOf = (companyId: string, personId: string, visitId: string) => `almanac:visit:${companyId}:${personId}:${visitId}`

function read(key: string): Draft {
  try {
    return readDraft(localStorage.getItem(key))
  } catch {
    return emptyDraft
  }
}

export type DraftHandle = { draft: Draft; ready: boolean; kept: boolean; change: (part: Partial<Draft>) => void; clear: () => void }

/** The visit's draft, kept on this device with each change; `kept` is false when the device refuses to store it. */
export function useDraft(visitId: string): DraftHandle {
  const { me } = useSession()
  const key = keyOf(me.company.id, me.person.id, visitId)
  const [draft, setDraft] = useState(emptyDraft)
  const [ready, setReady] = useState(false)
  const [kept, setKept] = useState(true)
  useEffect(() => {
    setDraft(read(key))
    setReady(true)
  }, [key])
  const change = useCallback(
    (part: Partial<Draft>) =>
      setDraft((now) => {
        const next = { ...now, ...part }
        try {
          localStorage.setItem(key, JSON.stringify(next))
          setKept(true)
        } catch {
          setKept(false)
        }
        return next
      }),
    [key],
  )
  const clear = useCallback(() => {
    localStorage.removeItem(key)
    setDraft(emptyDraft)
  }, [key])
  return { draft, ready, kept, change, clear }
}
