import { AppError } from '@almanac/runtime/errors'

/** A list's place as an opaque cursor: the sort key of the last row and its id. */
export function cursorOf(sort: string | number | null, id: string): string {
  return Buffer.from(JSON.stringify([sort, id])).toString('base64url')
}

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** Reads a cursor back; `kind` is what its sort key must be. Refuses, with a sentence, what this list did not make. */
export function readCursor(cursor: string, kind: 'string'): { sort: string; id: string }
export function readCursor(cursor: string, kind: 'number'): { sort: number; id: string }
export function readCursor(cursor: string, kind: 'string' | 'number'): { sort: string | number; id: string } {
  try {
    const [sort, id] = JSON.parse(Buffer.from(cursor, 'base64url').toString()) as [unknown, unknown]
    if (typeof sort === kind && typeof id === 'string' && UUID.test(id)) return { sort: sort as string | number, id }
  } catch {
    // Falls through to the sentence below.
  }
  throw new AppError('invalid', 'The place in this list could not be read. Start again from its first page.')
}
