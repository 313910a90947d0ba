import type { Tx } from '../client.ts'
import { dateOf, dayOf } from '../days.ts'

const ITEM = { select: { id: true, name: true, unit: true, onHand: true, leadDays: true } } as const

/** What visits up to a day take from the stores and have not loaded yet: their kits, and the materials that they bring. */
async function readToLoad(tx: Tx, companyId: string, day: string) {
  const visit = { state: { in: ['offered', 'booked'] }, crewDay: { day: { lte: dateOf(day) } } }
  const kits = await tx.kitReservation.findMany({
    where: { companyId, state: 'reserved', visit },
    select: { visitId: true, quantity: true, stockItem: ITEM, visit: { select: { crewDay: { select: { day: true } } } } },
  })
  const materials = await tx.materialLine.findMany({
    where: { companyId, state: 'reserved', job: { visits: { some: { ...visit, state: 'booked' } } } },
    select: {
      ...{ quantity: true, stockItem: ITEM },
      job: { select: { visits: { where: { state: 'booked' }, select: { id: true, crewDay: { select: { day: true } } } } } },
    },
  })
  return [
    ...kits.map(({ visit: of, ...one }) => ({ ...one, day: dayOf(of.crewDay.day) })),
    ...materials.flatMap(({ job, ...one }) => job.visits.map((of) => ({ ...one, visitId: of.id, day: dayOf(of.crewDay.day) }))),
  ]
}

/** Items that booked work up to a day takes more of than the stores hold, for each visit of that day that takes of them. */
export async function readShortKits(tx: Tx, companyId: string, day: string) {
  const reserved = await readToLoad(tx, companyId, day)
  const taken = new Map<string, number>()
  for (const { stockItem, quantity } of reserved) taken.set(stockItem.id, (taken.get(stockItem.id) ?? 0) + quantity)
  return reserved.flatMap(({ visitId, stockItem, day: on }) => {
    const wanted = taken.get(stockItem.id) ?? 0
    return on === day && wanted > stockItem.onHand + 1e-9 ? [{ visitId, item: stockItem, wanted }] : []
  })
}

export type ShortKit = Awaited<ReturnType<typeof readShortKits>>[number]
