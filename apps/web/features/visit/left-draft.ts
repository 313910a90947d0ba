import type { Draft } from './draft.ts'
import { readDraft } from './read-draft.ts'

export type LeftDraft = { key: string; draft: Draft; entries: number }

/**
 * Entries that this tablet still holds for another visit of the same job: that visit was called off and the job booked again under a new one. The
 * fullest, where there are several; null where there are none. `shelf` is what the person's keys begin with.
 */
export function leftDraft(
  store: Pick<Storage, 'length' | 'key' | 'getItem'>,
  shelf: string,
  visitId: string,
  jobId: string,
): LeftDraft | null {
  let found: LeftDraft | null = null
  for (let i = 0; i < store.length; i++) {
    const key = store.key(i)
    if (!key?.startsWith(shelf) || key === `${shelf}${visitId}`) continue
    const draft = readDraft(store.getItem(key))
    const entries = Object.values(draft.answers).filter((answer) => answer.text !== '').length
    if (draft.jobId === jobId && entries > (found?.entries ?? 0)) found = { key, draft, entries }
  }
  return found
}
