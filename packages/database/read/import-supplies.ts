import type { SupplyKind } from '@almanac/records/supply-kind'
import type { Tx } from '../client.ts'
import { mergedInto } from './mergings.ts'

/** A supply as an import looks it up. `sites`: how many live ones are on it. */
export type PresentSupply = { id: string; name: string; kind: SupplyKind; isArchived: boolean; hasHistory: boolean; sites: number }

/** Every supply of the firm by id, archived ones too; under the id of one that was merged stands what it was merged into. */
export async function readPresentSupplies(tx: Tx, companyId: string): Promise<Map<string, PresentSupply & { ownName: string }>> {
  const rows = await tx.waterSupply.findMany({
    where: { companyId },
    select: {
      ...{ id: true, name: true, kind: true, archivedAt: true },
      periods: { where: { withdrawnAt: null }, select: { id: true }, take: 1 },
      _count: { select: { sites: { where: { archivedAt: null } } } },
    },
    orderBy: { id: 'asc' },
  })
  const supplies = new Map(
    rows.map((one) => [
      one.id,
      {
        ...{ id: one.id, name: one.name, ownName: one.name, kind: one.kind as SupplyKind, isArchived: one.archivedAt !== null },
        ...{ hasHistory: one.periods.length > 0, sites: one._count.sites },
      },
    ]),
  )
  const gone = rows.filter((one) => one.archivedAt !== null).map((one) => one.id)
  const into = gone.length === 0 ? new Map<string, string>() : await mergedInto(tx, companyId, gone)
  const keptOf = (id: string): string => {
    const next = into.get(id)
    return next === undefined ? id : keptOf(next)
  }
  return new Map(
    [...supplies].map(([id, own]) => {
      const kept = supplies.get(keptOf(id)) ?? own
      return [id, { ...kept, ownName: own.ownName }]
    }),
  )
}
