import type { Desk } from '@almanac/contract/desk'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { readTelling, readToCall, readUnseen } from '@almanac/database/read/desk'
import { readPastYears } from '@almanac/database/read/track-record'
import { narrowedBy } from '@almanac/forecast/fleet/narrowed-by'
import { workAhead } from '@almanac/forecast/fleet/work-ahead'
import { now } from '@almanac/runtime/clock'
import { dayIn, instantIn } from '@almanac/units/calendar/zone-clock'
import { crewCapacity } from './crew-capacity.ts'
import { dueMonths } from './past-misses.ts'

/** Calls of one quiet afternoon. */
const CALLS = 10

type Reader = Pick<Scope, 'companyId'>

/** Past years whose count of failures lay below the range said, or above it. */
async function pastYears(scope: Reader): Promise<Desk['past']> {
  const years = await readPastYears(scope)
  if (years.length === 0) return null
  const came = years.map(({ happened, low, high }) => ({ whole: Math.round(happened), low, high }))
  return {
    years: years.length,
    tooMany: came.filter(({ whole, low }) => whole < low).length,
    tooFew: came.filter(({ whole, high }) => whole > high).length,
  }
}

/** What the owner's page begins with: one count of the work ahead, in rebeds and in hours, against what the crews can do. */
export async function readDesk(scope: Reader, timeZone: string): Promise<Desk> {
  const { companyId } = scope
  const today = dayIn(timeZone, now())
  const picture = await dueMonths(scope, {}, timeZone)
  const past = await pastYears(scope)
  return inCompany(scope, async (tx) => {
    const unseen = await readUnseen(tx, companyId)
    const { calls, gain, ...spread } = await readTelling(tx, companyId, CALLS)
    const narrower = picture.year ? narrowedBy(gain, { ...picture.year, ...spread }) : 0
    const counts = await readToCall(tx, companyId, today, instantIn(timeZone, today, 0))
    const { months, ...capacity } = await crewCapacity(tx, companyId, today, timeZone)
    const ahead = new Map(workAhead(picture.months, unseen).map((one) => [one.month, one]))
    const { hoursEach } = capacity
    return {
      ...{ asOfDay: picture.asOfDay, year: picture.year, unseen, past },
      telling: narrower >= 1 ? { calls, narrower } : null,
      ...counts,
      ...capacity,
      months: months.map((one) => {
        const { mean, low, high } = ahead.get(one.month) ?? { mean: 0, low: 0, high: 0 }
        const hours = { mean: mean * hoursEach, low: low * hoursEach, high: high * hoursEach }
        return { ...one, rebeds: { mean, low, high }, hours }
      }),
    }
  })
}
