import type { Draft } from './draft.ts'
import { readDraft } from './read-draft.ts'

/** Answers that hold something. */
export const entriesOf = (draft: Draft): number => Object.values(draft.answers).filter((answer) => answer.text !== '').length

/**
 * What the release before kept for a job in the browser's storage by key, a visit at a time: this visit's, else the fullest of another visit of the same job; null where
 * there is none. `shelf` is what the person's keys begin with.
 */
export function earlierDraft(
  store: Pick<Storage, 'length' | 'key' | 'getItem'>,
  shelf: string,
  visitId: string,
  jobId: string,
): { key: string; draft: Draft } | null {
  let found: { key: string; draft: Draft } | null = null
  for (let i = 0; i < store.length; i++) {
    const key = store.key(i)
    if (!key?.startsWith(shelf)) continue
    const draft = { ...readDraft(store.getItem(key)), visitId: key.slice(shelf.length) }
    if (draft.visitId === visitId) return { key, draft }
    if (draft.jobId === jobId && entriesOf(draft) > (found ? entriesOf(found.draft) : 0)) found = { key, draft }
  }
  return found
}
