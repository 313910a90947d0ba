'use client'
import { useCallback, useEffect, useRef, useState } from 'react'
import { useField } from '@/client/field/field-home'
import { type DraftOf, draftOf, putDraft, removeDraft } from '@/client/field/field-store'
import { type Draft, emptyDraft } from './draft.ts'
import { earlierDraft } from './earlier-draft.ts'
import { readDraft } from './read-draft.ts'

/** Where the release before kept a person's drafts. */
const shelfOf = (owner: string) => `almanac:visit:${owner}:`

/** The draft of a job: from the browser's database, or brought over from where the release before kept it. */
async function load(owner: `${string}:${string}`, jobId: string, of: DraftOf): Promise<Draft> {
  const kept = await draftOf(owner, jobId)
  if (kept !== undefined) return readDraft(kept)
  const earlier = earlierDraft(localStorage, shelfOf(owner), of.visitId, jobId)
  if (!earlier) return emptyDraft
  const draft = { ...earlier.draft, jobId }
  await putDraft(owner, jobId, JSON.stringify(draft), of)
  localStorage.removeItem(earlier.key)
  return draft
}

export type DraftHandle = {
  draft: Draft
  ready: boolean
  /** False where the device refused to store the last change. */
  kept: boolean
  change: (part: Partial<Draft>) => void
  /** When all that was typed has been written. */
  written: () => Promise<unknown>
  /** Shows an empty one; what was kept goes with the command that ends the visit. */
  clear: () => void
  /** Ends it without sending it anywhere. */
  throwAway: () => Promise<void>
}

/** What was typed for a job, kept on this device with each change: it belongs to job and person, so that a visit called off and booked again keeps it. */
export function useDraft(of: (DraftOf & { jobId: string }) | null): DraftHandle {
  const { owner } = useField()
  const [draft, setDraft] = useState(emptyDraft)
  const [ready, setReady] = useState(false)
  const [kept, setKept] = useState(true)
  const latest = useRef(emptyDraft)
  const writing = useRef<Promise<unknown>>(Promise.resolve())
  const [visitId, jobId, siteLabel = ''] = [of?.visitId, of?.jobId, of?.siteLabel]
  useEffect(() => {
    if (!visitId || !jobId) return
    let left = false
    setReady(false)
    void load(owner, jobId, { visitId, siteLabel })
      .catch(() => {
        setKept(false)
        return emptyDraft
      })
      .then((found) => {
        if (left) return
        latest.current = found
        setDraft(found)
        setReady(true)
      })
    return () => {
      left = true
    }
  }, [owner, visitId, jobId, siteLabel])
  const change = useCallback(
    (part: Partial<Draft>) => {
      if (!jobId || !visitId) return
      const next = { ...latest.current, ...part }
      latest.current = next
      setDraft(next)
      // In the order of typing: the last one stands.
      writing.current = writing.current
        .then(() => putDraft(owner, jobId, JSON.stringify(next), { visitId, siteLabel }))
        .then(
          () => setKept(true),
          () => setKept(false),
        )
    },
    [owner, jobId, visitId, siteLabel],
  )
  const written = useCallback(() => writing.current, [])
  const clear = useCallback(() => {
    latest.current = emptyDraft
    setDraft(emptyDraft)
  }, [])
  const throwAway = useCallback(async () => {
    if (jobId) await removeDraft(owner, jobId)
    clear()
  }, [owner, jobId, clear])
  return { draft, ready, kept, change, written, clear, throwAway }
}
