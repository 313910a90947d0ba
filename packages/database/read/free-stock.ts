import type { Tx } from '../client.ts'

/** What the stores keep, with what is left of each once booked work is served; a visit's own kit may be counted as free. */
export async function readFreeStock(tx: Tx, companyId: string, exceptVisitId?: string) {
  const items = await tx.stockItem.findMany({ where: { companyId, archivedAt: null }, orderBy: { id: 'asc' }, take: 500 })
  const reserved = await tx.kitReservation.groupBy({
    by: ['stockItemId'],
    where: {
      companyId,
      state: { in: ['reserved', 'picked'] },
      ...(exceptVisitId ? { visitId: { not: exceptVisitId } } : {}),
      visit: { state: { in: ['offered', 'booked', 'under-way'] } },
    },
    _sum: { quantity: true },
  })
  const spoken = new Map(reserved.map((one) => [one.stockItemId, one._sum.quantity ?? 0]))
  return items.map((item) => ({ ...item, free: item.onHand - (spoken.get(item.id) ?? 0) }))
}
