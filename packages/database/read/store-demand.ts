import { notFound } from '@almanac/runtime/errors'
import { dateOf, dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { BED_FACTS, bedFacts } from './bed-facts.ts'
import { readUnseen } from './desk.ts'
import { reservedOf } from './free-stock.ts'
import { IN_SERVICE } from './in-service.ts'

/** How many of the most pressing beds stand for a usual rebed's kit. */
const BEDS = 200
const MONTHS = 6

/** What the stores hold, what booked work has spoken for and when, and what the forecast expects beside it. */
export async function readStoreDemand(scope: Pick<Scope, 'companyId'>, today: string) {
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const items = await tx.stockItem.findMany({ where: { companyId, archivedAt: null }, orderBy: { name: 'asc' }, take: 500 })
    const reserved = await reservedOf(tx, companyId)
    const beds = await tx.bedForecast.findMany({
      where: { companyId, chance12Months: { gt: 0 }, bed: IN_SERVICE },
      orderBy: [{ chance12Months: 'desc' }, { id: 'asc' }],
      take: BEDS,
      select: { chance12Months: true, bed: { include: BED_FACTS } },
    })
    const months = await tx.forecastMonth.findMany({
      where: { companyId, waterSupplyId: null, months: 1, month: { gte: dateOf(`${today.slice(0, 7)}-01`) } },
      orderBy: { month: 'asc' },
      take: MONTHS,
      select: { month: true, mean: true, low: true, high: true },
    })
    const rebeds = await tx.visit.findMany({
      where: { companyId, state: { in: ['booked', 'under-way'] }, job: { kind: 'rebed' } },
      select: { crewDay: { select: { day: true } } },
    })
    return {
      items,
      reserved: reserved.map((one) => ({ ...one, day: dayOf(one.day) })),
      beds: beds.map(({ chance12Months, bed }) => ({ weight: chance12Months ?? 0, bed: bedFacts(bed) })),
      months: months.map(({ month, ...band }) => ({ month: dayOf(month), ...band })),
      unseen: await readUnseen(tx, companyId),
      bookedRebedDays: rebeds.map((visit) => dayOf(visit.crewDay.day)),
    }
  })
}

export type StoreDemand = Awaited<ReturnType<typeof readStoreDemand>>

/** What one day sheet's kits and materials take, line by line. */
export async function readLoadList(scope: Pick<Scope, 'companyId'>, crewDayId: string) {
  return inCompany(scope, async (tx) => {
    const sheet = await tx.crewDay.findUnique({
      where: { companyId_id: { companyId: scope.companyId, id: crewDayId } },
      select: { id: true },
    })
    if (!sheet) throw notFound('day sheet')
    const { companyId } = scope
    const visit = { crewDayId, state: { in: ['booked', 'under-way'] } }
    const loaded = { companyId, state: { in: ['reserved', 'picked'] } }
    const select = { quantity: true, state: true, stockItem: { select: { id: true, name: true, unit: true, onHand: true } } } as const
    const kits = await tx.kitReservation.findMany({ where: { ...loaded, visit }, select })
    const materials = await tx.materialLine.findMany({ where: { ...loaded, job: { visits: { some: visit } } }, select })
    return [...kits, ...materials]
  })
}
