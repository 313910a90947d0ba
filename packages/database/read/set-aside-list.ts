import type { SetAsideRow } from '@almanac/contract/field'
import { inCompany, type Scope } from '../in-company.ts'
import { cursorOf, readCursor } from './page-key.ts'

/** An entry as it is kept; the door says its content in words. */
export type SetAsideFound = Omit<SetAsideRow, 'lines'> & { content: unknown }

/** What tablets sent and nobody in the office has dealt with yet, the oldest first. */
export async function readSetAside(
  scope: Pick<Scope, 'companyId'>,
  query: { limit: number; cursor?: string },
): Promise<{ rows: SetAsideFound[]; nextCursor: string | null }> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const beyond = after
    ? { OR: [{ receivedAt: { gt: new Date(after.sort) } }, { receivedAt: new Date(after.sort), id: { gt: after.id } }] }
    : {}
  return inCompany(scope, async (tx) => {
    const found = await tx.setAside.findMany({
      where: { companyId, settledAt: null, ...beyond },
      include: { visit: { select: { jobId: true, job: { select: { site: { select: { label: true } } } } } } },
      orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }],
      take: query.limit + 1,
    })
    const rows = found.slice(0, query.limit)
    const last = rows.at(-1)
    const people = await tx.colleague.findMany({
      where: { companyId, personId: { in: rows.map((row) => row.personId) } },
      select: { personId: true, name: true },
    })
    return {
      rows: rows.map((row) => ({
        ...{ id: row.id, version: row.version, command: row.command, reason: row.reason, clockAheadMinutes: row.clockAheadMinutes },
        kind: row.kind as SetAsideRow['kind'],
        personName: people.find((one) => one.personId === row.personId)?.name ?? null,
        ...{ visitId: row.visitId, jobId: row.visit?.jobId ?? null, siteLabel: row.visit?.job.site.label ?? null },
        content: row.content,
        ...{ madeAt: row.madeAt.toISOString(), receivedAt: row.receivedAt.toISOString() },
      })),
      nextCursor: found.length > query.limit && last ? cursorOf(last.receivedAt.toISOString(), last.id) : null,
    }
  })
}
