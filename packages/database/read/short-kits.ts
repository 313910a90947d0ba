import type { Tx } from '../client.ts'
import { dateOf, dayOf } from '../days.ts'

/** Items that booked work up to a day takes more of than the stores hold, for each visit of that day that takes of them. */
export async function readShortKits(tx: Tx, companyId: string, day: string) {
  const reserved = await tx.kitReservation.findMany({
    where: {
      companyId,
      state: 'reserved',
      visit: { state: { in: ['offered', 'booked'] }, crewDay: { day: { lte: dateOf(day) } } },
    },
    select: {
      ...{ visitId: true, quantity: true },
      stockItem: { select: { id: true, name: true, unit: true, onHand: true, leadDays: true } },
      visit: { select: { crewDay: { select: { day: true } } } },
    },
  })
  const taken = new Map<string, number>()
  for (const { stockItem, quantity } of reserved) taken.set(stockItem.id, (taken.get(stockItem.id) ?? 0) + quantity)
  return reserved.flatMap(({ visitId, stockItem, visit }) => {
    const wanted = taken.get(stockItem.id) ?? 0
    return dayOf(visit.crewDay.day) === day && wanted > stockItem.onHand + 1e-9 ? [{ visitId, item: stockItem, wanted }] : []
  })
}

export type ShortKit = Awaited<ReturnType<typeof readShortKits>>[number]
