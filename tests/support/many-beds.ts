import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { newId } from '@almanac/runtime/ids'
import { addDays } from '@almanac/units/calendar/calendar-day'
import type { FirmRecords } from './two-firms.ts'

/** Two beds one after the other in each of `count` tanks: the first worn out after about `lifeYears`, the second in service. Spread evenly, no chance in it. */
export async function addManyBeds(firm: FirmRecords, count: number, lifeYears: number): Promise<{ inService: string[]; ended: string[] }> {
  const own = { companyId: firm.companyId }
  const places = Array.from({ length: count }, (_, i) => {
    const life = lifeYears * (0.6 + (0.8 * ((i * 7) % count)) / count)
    const ended = addDays('2021-01-01', (i * 37) % 1900)
    const began = addDays(ended, -Math.round(life * 365.25))
    return { softenerId: newId(), tankId: newId(), first: newId(), second: newId(), began, ended }
  })
  await inCompany(
    firm,
    async (tx) => {
      await tx.softener.createMany({
        data: places.map((one) => ({ ...own, id: one.softenerId, siteId: firm.siteId, label: 'House softener' })),
      })
      await tx.tank.createMany({
        data: places.map((one) => ({ ...own, id: one.tankId, softenerId: one.softenerId, diameterIn: 10, heightIn: 54 })),
      })
      const bed = { ...own, volumeFt3: 1.5, resinKind: 'gel-8' }
      await tx.bed.createMany({
        data: places.flatMap(({ tankId, first, second, began, ended }) => [
          {
            ...{ ...bed, id: first, tankId, beganEarliest: dateOf(began), beganLatest: dateOf(began) },
            ...{ lastSeenDay: dateOf(addDays(ended, -200)), endedEarliest: dateOf(ended), endedLatest: dateOf(ended), endCause: 'worn' },
          },
          { ...bed, id: second, tankId, beganEarliest: dateOf(ended), beganLatest: dateOf(ended), lastSeenDay: dateOf('2026-06-01') },
        ]),
      })
      // The firm came yearly: it knew these beds from two years after they went in.
      await tx.job.createMany({
        data: places.map((one) => ({
          ...{
            ...own,
            id: newId(),
            siteId: firm.siteId,
            softenerId: one.softenerId,
            bedId: one.first,
            kind: 'annual-visit',
            state: 'closed',
          },
          ...{ closedDay: dateOf(addDays(one.began, 730)), minutes: 60, crewSize: 1 },
        })),
      })
    },
    { timeoutMs: 60_000 },
  )
  return { inService: places.map((one) => one.second), ended: places.map((one) => one.first) }
}
