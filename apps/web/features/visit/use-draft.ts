'use client'
import { useCallback, useEffect, useState } from 'react'
import { useSession } from '@/client/providers'
import { type Draft, emptyDraft } from './draft.ts'
import { type LeftDraft, leftDraft } from './left-draft.ts'
import { readDraft } from './read-draft.ts'

/** Where a person's drafts are kept: under company, person and visit, so that nobody sends another's. */
const shelfOf = (companyId: string, personId: string) => `almanac:visit:${companyId}:${personId}:`

function read(key: string): Draft {
  try {
    return readDraft(localStorage.getItem(key))
  } catch {
    return emptyDraft
  }
}

export type DraftHandle = {
  draft: Draft
  ready: boolean
  kept: boolean
  change: (part: Partial<Draft>) => void
  clear: () => void
  /** What this tablet holds for another visit of the same job, and how to go on with it here. */
  leftFor: (jobId: string) => LeftDraft | null
  takeOver: (from: LeftDraft) => void
}

/** The visit's draft, kept on this device with each change; `kept` is false when the device refuses to store it. */
export function useDraft(visitId: string): DraftHandle {
  const { me } = useSession()
  const shelf = shelfOf(me.company.id, me.person.id)
  const key = `${shelf}${visitId}`
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
  const leftFor = useCallback(
    (jobId: string) => {
      try {
        return leftDraft(localStorage, shelf, visitId, jobId)
      } catch {
        return null
      }
    },
    [shelf, visitId],
  )
  const takeOver = useCallback(
    (from: LeftDraft) => {
      // The command's id belongs to the visit it was for; here it is another one.
      change({ ...from.draft, commandId: null })
      localStorage.removeItem(from.key)
    },
    [change],
  )
  return { draft, ready, kept, change, clear, takeOver, leftFor }
}
