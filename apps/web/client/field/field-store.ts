import type { Me } from '@almanac/contract/session'
import { emptyOutbox, type Outbox } from '@almanac/service-rules/field/outbox'
import type { Messages } from '@almanac/words/messages-of'
import type { DBSchema } from 'idb'
import { v7 } from 'uuid'
import { browserStore } from './open-store.ts'

/** Whose a row is: company and person. Nothing of one owner is read or sent under another. */
export type Owner = `${string}:${string}`
export const ownerOf = (me: { company: { id: string }; person: { id: string } }): Owner => `${me.company.id}:${me.person.id}`

/** Whoever opened the field's pages last, with the words they read: what the shell shows without a server. */
export type Known = { me: Me; messages: Messages }
type Kept = { owner: Owner; name: string; answer: unknown; at: string }
/** For which visit a draft was begun, to be named in a list. */
export type DraftOf = { visitId: string; siteLabel: string }
type KeptDraft = { owner: Owner; jobId: string; draft: string; of: DraftOf }

interface Shape extends DBSchema {
  known: { key: string; value: Known }
  kept: { key: [Owner, string]; value: Kept; indexes: { owner: Owner } }
  drafts: { key: [Owner, string]; value: KeptDraft; indexes: { owner: Owner } }
  outbox: { key: Owner; value: Outbox }
}

const LAST = 'last in use'
/** As `LAST`, of the release before, whose messages came as they are written: its pages may still be the ones that are kept here. */
const LAST_BEFORE = 'last'
const FORGET_AFTER_MS = 4 * 24 * 3_600_000

const store = browserStore<Shape>('almanac-field', (db) => {
  db.createObjectStore('known')
  db.createObjectStore('kept', { keyPath: ['owner', 'name'] }).createIndex('owner', 'owner')
  db.createObjectStore('drafts', { keyPath: ['owner', 'jobId'] }).createIndex('owner', 'owner')
  db.createObjectStore('outbox')
})

/** Notes who works on this device now; what was kept of others' days to be read goes, what others have not sent stays theirs. */
export async function rememberPerson(known: Known): Promise<void> {
  const owner = ownerOf(known.me)
  const tx = (await store()).transaction(['known', 'kept'], 'readwrite')
  await tx.objectStore('known').put(known, LAST)
  const before = await tx.objectStore('known').get(LAST_BEFORE)
  if (before && ownerOf(before.me) !== owner) await tx.objectStore('known').delete(LAST_BEFORE)
  const old = new Date(Date.now() - FORGET_AFTER_MS).toISOString()
  for (let row = await tx.objectStore('kept').openCursor(); row; row = await row.continue())
    if (row.value.owner !== owner || row.value.at < old) await row.delete()
  await tx.done
}

/** Leaves nothing of whoever worked here before to be read; what they have not sent stays theirs. */
export async function forgetOthers(owner: Owner): Promise<void> {
  const known = await lastKnown()
  if (known && ownerOf(known.me) !== owner) await forgetPerson(ownerOf(known.me), 'keep')
}

export async function lastKnown(): Promise<Known | undefined> {
  const db = await store()
  const known = await db.get('known', LAST)
  if (known) return known
  const before = await db.get('known', LAST_BEFORE)
  if (!before) return undefined
  const { compileMessages } = await import('@almanac/words/compile-messages')
  return { ...before, messages: compileMessages(before.messages as unknown as Parameters<typeof compileMessages>[0]) }
}

/** Keeps an answer of the server for when there is none. */
export async function keep(owner: Owner, name: string, answer: unknown): Promise<void> {
  await (await store()).put('kept', { owner, name, answer, at: new Date().toISOString() })
}

export async function keptAnswer<T>(owner: Owner, name: string): Promise<{ answer: T; at: string } | null> {
  const row = await (await store()).get('kept', [owner, name])
  return row ? { answer: row.answer as T, at: row.at } : null
}

/** What was typed for a job, as it was put there; undefined where nothing was. */
export async function draftOf(owner: Owner, jobId: string): Promise<string | undefined> {
  return (await (await store()).get('drafts', [owner, jobId]))?.draft
}

export async function putDraft(owner: Owner, jobId: string, draft: string, of: DraftOf): Promise<void> {
  await (await store()).put('drafts', { owner, jobId, draft, of })
}

/** The visits that drafts were begun for. */
export async function draftsOf(owner: Owner): Promise<DraftOf[]> {
  const rows = await (await store()).getAllFromIndex('drafts', 'owner', owner)
  // A row of before its visit was named beside it.
  return rows.flatMap((row) => (row.of ? [row.of] : []))
}

export async function removeDraft(owner: Owner, jobId: string): Promise<void> {
  await (await store()).delete('drafts', [owner, jobId])
}

export const readOutbox = async (owner: Owner): Promise<Outbox> => (await (await store()).get('outbox', owner)) ?? emptyOutbox(v7())

/** Changes a queue in one transaction of the browser's database; with `doneJobId` the draft of that job goes in the same one. */
export async function changeOutbox(owner: Owner, change: (outbox: Outbox) => Outbox, doneJobId?: string): Promise<Outbox> {
  const tx = (await store()).transaction(['outbox', 'drafts'], 'readwrite')
  const rows = tx.objectStore('outbox')
  const changed = change((await rows.get(owner)) ?? emptyOutbox(v7()))
  await rows.put(changed, owner)
  if (doneJobId) await tx.objectStore('drafts').delete([owner, doneJobId])
  await tx.done
  return changed
}

/** What this device holds of a person that is nowhere else: commands that wait, and visits begun and not finished. */
export async function unsentOf(owner: Owner): Promise<{ waiting: number; drafts: number }> {
  const db = await store()
  const { waiting, stuck } = (await db.get('outbox', owner)) ?? emptyOutbox('')
  return { waiting: waiting.length + stuck.length, drafts: await db.countFromIndex('drafts', 'owner', owner) }
}

/** Leaves nothing of a person to be read here. `unsent`: keep what is nowhere else for their next sign-in, or throw it away. */
export async function forgetPerson(owner: Owner, unsent: 'keep' | 'throw-away'): Promise<void> {
  const tx = (await store()).transaction(['known', 'kept', 'drafts', 'outbox'], 'readwrite')
  for (const key of [LAST, LAST_BEFORE]) await tx.objectStore('known').delete(key)
  const stores = unsent === 'keep' ? (['kept'] as const) : (['kept', 'drafts'] as const)
  for (const name of stores)
    for (let row = await tx.objectStore(name).index('owner').openCursor(owner); row; row = await row.continue()) await row.delete()
  if (unsent === 'throw-away') await tx.objectStore('outbox').delete(owner)
  await tx.done
}
