import { openMaterialStates } from '@almanac/records/stock'
import type { Tx } from '../client.ts'

/** The visit that delivers. */
const OPEN_VISIT = { where: { state: { in: ['booked', 'under-way'] } }, select: { crewDay: { select: { day: true } } } }

type Reserved = { stockItemId: string; quantity: number; day: Date | null }

/**
 * What open work has spoken for: kits of visits that are offered, booked or under way, and materials that customers asked for, with the day they are wanted; null for as
 * soon as may be. Of one item, or without one visit's own kit, where asked.
 */
export async function reservedOf(
  tx: Tx,
  companyId: string,
  among: { stockItemId?: string; exceptVisitId?: string } = {},
): Promise<Reserved[]> {
  const { stockItemId, exceptVisitId } = among
  const kits = await tx.kitReservation.findMany({
    where: {
      ...{ companyId, stockItemId },
      state: { in: ['reserved', 'picked'] },
      ...(exceptVisitId ? { visitId: { not: exceptVisitId } } : {}),
      visit: { state: { in: ['offered', 'booked', 'under-way'] } },
    },
    select: { stockItemId: true, quantity: true, visit: { select: { crewDay: { select: { day: true } } } } },
  })
  const materials = await tx.materialLine.findMany({
    where: { ...{ companyId, stockItemId }, state: { in: [...openMaterialStates] } },
    select: { stockItemId: true, quantity: true, job: { select: { dueLatest: true, visits: OPEN_VISIT } } },
  })
  return [
    ...kits.map(({ visit, ...one }) => ({ ...one, day: visit.crewDay.day })),
    ...materials.map(({ job, ...one }) => ({ ...one, day: job.visits[0]?.crewDay.day ?? job.dueLatest })),
  ]
}

/** What the stores keep, with what is left of each once booked work is served; a visit's own kit may be counted as free. */
export async function readFreeStock(tx: Tx, companyId: string, exceptVisitId?: string) {
  const items = await tx.stockItem.findMany({ where: { companyId, archivedAt: null }, orderBy: { id: 'asc' }, take: 500 })
  const spoken = new Map<string, number>()
  for (const { stockItemId, quantity } of await reservedOf(tx, companyId, { exceptVisitId }))
    spoken.set(stockItemId, (spoken.get(stockItemId) ?? 0) + quantity)
  return items.map((item) => ({ ...item, free: item.onHand - (spoken.get(item.id) ?? 0) }))
}
