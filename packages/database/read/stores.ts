import type { MovementRow, StockRow } from '@almanac/contract/stores'
import { inCompany, type Scope } from '../in-company.ts'
import { cursorOf, readCursor } from './page-key.ts'

type Query = { limit: number; cursor?: string }

/** What is kept, by name, with what is on hand and whether a count is called for. */
export async function readStockItems(
  scope: Pick<Scope, 'companyId'>,
  query: Query,
): Promise<{ rows: StockRow[]; nextCursor: string | null }> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const found = await inCompany(scope, (tx) =>
    tx.stockItem.findMany({
      where: { companyId, archivedAt: null, ...(after ? { name: { gt: after.sort } } : {}) },
      include: { _count: { select: { discrepancies: { where: { settledAt: null } } } } },
      orderBy: { name: 'asc' },
      take: query.limit + 1,
    }),
  )
  const rows = found.slice(0, query.limit)
  const last = rows.at(-1)
  return {
    rows: rows.map(({ _count, companyId: _company, archivedAt: _archived, ...item }) => ({
      ...item,
      openDiscrepancies: _count.discrepancies,
    })),
    nextCursor: found.length > query.limit && last ? cursorOf(last.name, last.id) : null,
  }
}

/** Changes of quantity, the newest first, with the visit that used a part. */
export async function readMovements(
  scope: Pick<Scope, 'companyId'>,
  query: Query,
): Promise<{ rows: MovementRow[]; nextCursor: string | null }> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const found = await inCompany(scope, (tx) =>
    tx.movement.findMany({
      where: {
        companyId,
        ...(after ? { OR: [{ at: { lt: new Date(after.sort) } }, { at: new Date(after.sort), id: { lt: after.id } }] } : {}),
      },
      include: {
        stockItem: { select: { name: true, unit: true } },
        visit: { select: { job: { select: { site: { select: { label: true } } } } } },
      },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: query.limit + 1,
    }),
  )
  const rows = found.slice(0, query.limit)
  const last = rows.at(-1)
  return {
    rows: rows.map((row) => ({
      id: row.id,
      at: row.at.toISOString(),
      itemName: row.stockItem.name,
      unit: row.stockItem.unit,
      quantity: row.quantity,
      reason: row.reason as MovementRow['reason'],
      visitId: row.visitId,
      siteLabel: row.visit?.job.site.label ?? null,
    })),
    nextCursor: found.length > query.limit && last ? cursorOf(last.at.toISOString(), last.id) : null,
  }
}
