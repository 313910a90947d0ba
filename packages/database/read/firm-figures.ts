import type { FigureChange, FigureRow, FigureValue } from '@almanac/contract/firm'
import { DRIVE_PACE_KEY } from '@almanac/records/drive-pace'
import { inCompany, type Scope } from '../in-company.ts'
import { cursorOf, readCursor } from './page-key.ts'

/** What the firm set in the place of usual figures of calculation, and what it put back. */
export async function readFirmFigures(scope: Pick<Scope, 'companyId'>): Promise<FigureRow[]> {
  const { companyId } = scope
  const rows = await inCompany(scope, (tx) =>
    tx.firmFigure.findMany({ where: { companyId, key: { not: DRIVE_PACE_KEY } }, orderBy: { key: 'asc' } }),
  )
  return rows.map(({ id, version, key, value, note, archivedAt }) => ({
    ...{ id, version, key, note, inUse: archivedAt === null },
    value: value as FigureValue,
  }))
}

type Query = { limit: number; cursor?: string; key?: string }
type Detail = { field?: string; from?: FigureChange['from']; to?: FigureChange['to']; note?: string | null }

/** Changes to company settings and settings from the audit trail, newest first; `nameOf` tells who a person is. One figure's own where `key` is given. */
export async function readFigureHistory(
  scope: Pick<Scope, 'companyId'>,
  query: Query,
  nameOf: (personId: string) => string | null,
): Promise<{ rows: FigureChange[]; nextCursor: string | null }> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const found = await inCompany(scope, async (tx) => {
    const figure = query.key ? await tx.firmFigure.findUnique({ where: { companyId_key: { companyId, key: query.key } } }) : null
    if (query.key && !figure) return []
    const before = after ? { OR: [{ at: { lt: new Date(after.sort) } }, { at: new Date(after.sort), id: { lt: after.id } }] } : {}
    return tx.auditEntry.findMany({
      where: {
        companyId,
        ...before,
        ...(figure ? { entity: 'firm-figure', entityId: figure.id } : { entity: { in: ['firm-figure', 'company-settings'] } }),
      },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: query.limit + 1,
    })
  })
  const rows = found.slice(0, query.limit)
  const last = rows.at(-1)
  return {
    rows: rows.map((row) => {
      const { field = 'settings', from = null, to = null, note = null } = row.detail as Detail
      return { id: row.id, at: row.at.toISOString(), who: row.personId ? nameOf(row.personId) : null, field, from, to, note }
    }),
    nextCursor: found.length > query.limit && last ? cursorOf(last.at.toISOString(), last.id) : null,
  }
}
