import type { PhotographKind } from '@almanac/records/picture-kind'
import type { Unsigned } from '@almanac/records/signing'
import type { DBSchema } from 'idb'
import type { Owner } from '../field/field-store.ts'
import { browserStore } from '../field/open-store.ts'

/** What was taken or said at a visit: a photograph, a signature with its name, or that nobody signed. */
export type Taken =
  | { is: 'photograph'; kind: PhotographKind; bytes: ArrayBuffer; sha256: string }
  | { is: 'signature'; name: string; bytes: ArrayBuffer; sha256: string }
  | { is: 'unsigned'; answer: Unsigned }

/** One of them as this device keeps it; the id is made here and is the record's at the office. `refused` is the office's word where it will never take it. */
export type KeptPicture = { owner: Owner; id: string; visitId: string; at: string; taken: Taken; sent: boolean; refused: string | null }

interface Shape extends DBSchema {
  pictures: { key: [Owner, string]; value: KeptPicture; indexes: { owner: Owner } }
}

const FORGET_AFTER_MS = 4 * 24 * 3_600_000
/** Told whenever something here changed. */
const changes = new EventTarget()

/** A database of its own beside the field's: large values, which its queue and its drafts need not wait for. */
const store = browserStore<Shape>(
  'almanac-pictures',
  (db) => void db.createObjectStore('pictures', { keyPath: ['owner', 'id'] }).createIndex('owner', 'owner'),
)

/** Hears of changes until the answer is called. */
export function onPictures(hear: () => void): () => void {
  changes.addEventListener('change', hear)
  return () => changes.removeEventListener('change', hear)
}

const tell = () => changes.dispatchEvent(new Event('change'))

/** Everything that is kept of a person, oldest first. */
export async function picturesOf(owner: Owner): Promise<KeptPicture[]> {
  const rows = await (await store()).getAllFromIndex('pictures', 'owner', owner)
  return rows.sort((a, b) => (a.at < b.at ? -1 : 1))
}

export async function putPicture(row: KeptPicture): Promise<void> {
  await (await store()).put('pictures', row)
  tell()
}

export async function dropPicture(owner: Owner, id: string): Promise<void> {
  await (await store()).delete('pictures', [owner, id])
  tell()
}

/** Forgets what was sent some days ago; what was not sent stays, whoever it is of. */
export async function dropOldPictures(): Promise<void> {
  const old = new Date(Date.now() - FORGET_AFTER_MS).toISOString()
  const tx = (await store()).transaction('pictures', 'readwrite')
  for (let row = await tx.store.openCursor(); row; row = await row.continue()) if (row.value.sent && row.value.at < old) await row.delete()
  await tx.done
}

/** How much is nowhere else. */
export const unsentPictures = async (owner: Owner): Promise<number> => (await picturesOf(owner)).filter((one) => !one.sent).length

/** Leaves nothing of a person here, or nothing but what is nowhere else. */
export async function forgetPictures(owner: Owner, unsent: 'keep' | 'throw-away'): Promise<void> {
  const tx = (await store()).transaction('pictures', 'readwrite')
  for (let row = await tx.store.index('owner').openCursor(owner); row; row = await row.continue())
    if (row.value.sent || unsent === 'throw-away') await row.delete()
  await tx.done
  tell()
}
