import type { MergingRow } from '@almanac/contract/merging'
import type { Mergeable } from '@almanac/records/merging'
import type { Tx } from '../client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { cursorOf, readCursor } from './page-key.ts'

/** What was merged, the latest first, with the names that both bear today. */
export async function readMergings(
  scope: Pick<Scope, 'companyId'>,
  query: { limit: number; cursor?: string },
): Promise<{ rows: MergingRow[]; nextCursor: string | null }> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  const before = after && { OR: [{ at: { lt: new Date(after.sort) } }, { at: new Date(after.sort), id: { lt: after.id } }] }
  return inCompany(scope, async (tx) => {
    const found = await tx.merging.findMany({
      where: { companyId, ...before },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: query.limit + 1,
    })
    const rows = found.slice(0, query.limit)
    const ids = rows.flatMap((row) => [row.keptId ?? [], row.goneId ?? []].flat())
    const where = { companyId, id: { in: ids } }
    const customers = await tx.customer.findMany({ where: { ...where, erasedAt: null }, select: { id: true, name: true, reference: true } })
    const sites = await tx.site.findMany({ where, select: { id: true, label: true, town: true } })
    const supplies = await tx.waterSupply.findMany({ where, select: { id: true, name: true } })
    const names = new Map([
      ...supplies.map((one) => [one.id, one.name] as const),
      ...customers.map((one) => [one.id, one.reference ? `${one.name} (no. ${one.reference})` : one.name] as const),
      ...sites.map((one) => [one.id, one.town ? `${one.label}, ${one.town}` : one.label] as const),
    ])
    const last = rows.at(-1)
    return {
      rows: rows.map(({ id, version, kind, keptId, goneId, town, moved, at, undoneAt }) => ({
        ...{ id, version, kind: kind as Mergeable, at: at.toISOString(), undone: undoneAt !== null },
        kept: town ?? names.get(keptId ?? '') ?? null,
        gone: town === null ? (names.get(goneId ?? '') ?? null) : (moved as { from: string }[]).map((one) => one.from).join(', '),
      })),
      nextCursor: found.length > query.limit && last ? cursorOf(last.at.toISOString(), last.id) : null,
    }
  })
}

/** How sites name their towns, the most sites first; each spelling by itself. */
export async function readTownsOfSites(scope: Pick<Scope, 'companyId'>): Promise<{ town: string; sites: number }[]> {
  return inCompany(
    scope,
    (tx) => tx.$queryRaw<{ town: string; sites: number }[]>`
      select town, count(*)::int as sites from site where company_id = ${scope.companyId}::uuid and archived_at is null and town is not null and town <> ''
      group by town order by sites desc, town limit 500`,
  )
}

/** Into what customers, sites or supplies were merged that are on record no more: those that a list still speaks of. By the id of the one that went. */
export async function mergedInto(tx: Tx, companyId: string, goneIds: readonly string[]): Promise<Map<string, string>> {
  const rows = await tx.merging.findMany({
    where: { companyId, goneId: { in: [...goneIds] }, undoneAt: null },
    select: { goneId: true, keptId: true },
    orderBy: { at: 'asc' },
  })
  return new Map(rows.flatMap(({ goneId, keptId }) => (goneId && keptId ? [[goneId, keptId] as const] : [])))
}

/** Every customer that was merged into this one, and into those: they are the same person. */
export async function customersMergedInto(tx: Tx, companyId: string, customerId: string): Promise<string[]> {
  const all = new Set([customerId])
  for (let asked = [customerId]; asked.length > 0; ) {
    const rows = await tx.merging.findMany({
      where: { companyId, kind: 'customer', keptId: { in: asked }, undoneAt: null },
      select: { goneId: true },
    })
    asked = rows.flatMap(({ goneId }) => (goneId && !all.has(goneId) ? [goneId] : []))
    for (const id of asked) all.add(id)
  }
  all.delete(customerId)
  return [...all]
}
