/** One fact that a change touched. Without `from` and `to` where its value may say something of a person: then only that it changed is kept. */
export type AuditChange = { field: string; from?: unknown; to?: unknown }

const same = (a: unknown, b: unknown) => JSON.stringify(a ?? null) === JSON.stringify(b ?? null)
const blank = (value: unknown) => (value === '' || value === undefined ? null : value)

/**
 * What differs between a record as it was and as it was sent, for the audit trail; nothing for what was left out of `after`. `personal` are fields that hold names, ways to
 * reach somebody, an address or a note: the trail cannot be changed, so their values never go in.
 */
export function changesOf<T extends object>(
  before: object,
  after: T,
  personal: readonly (keyof T & string)[] = [],
): { changes: AuditChange[] } {
  const was = before as Record<string, unknown>
  const changes: AuditChange[] = []
  for (const [field, value] of Object.entries(after)) {
    const [from, to] = [blank(was[field]), blank(value)]
    if (value === undefined || same(from, to)) continue
    changes.push((personal as readonly string[]).includes(field) ? { field } : { field, from, to })
  }
  return { changes }
}
