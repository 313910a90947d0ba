import { CloseOutInput } from '@almanac/contract/visits'

/** What a tablet says was done at a visit. */
export type FieldDeed = { kind: 'start' | 'undo-start'; visitId: string } | { kind: 'close-out'; visitId: string; record: CloseOutInput }

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i
const idIn = (value: unknown): string | null => (typeof value === 'string' && UUID.test(value) ? value : null)

/** The visit that a body names, whether or not the rest of it can be read. */
export function visitNamedIn(body: Readonly<Record<string, unknown>>): string | null {
  const record = body.record as { visitId?: unknown } | null | undefined
  return idIn(body.visitId) ?? (typeof record === 'object' && record !== null ? idIn(record.visitId) : null)
}

/** Reads a body by its kind and the version of its form; null where this server knows no such form. Forms that were ever sent stay readable here. */
export function readFieldCommand(form: number, kind: string, body: Readonly<Record<string, unknown>>): FieldDeed | null {
  if (form !== 1) return null
  const visitId = visitNamedIn(body)
  if (visitId === null) return null
  if (kind === 'start' || kind === 'undo-start') return { kind, visitId }
  if (kind !== 'close-out') return null
  const record = CloseOutInput.safeParse(body.record)
  return record.success ? { kind, visitId, record: record.data } : null
}
