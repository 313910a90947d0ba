import type { RecordedResinKind } from '@almanac/records/resin-kind'
import { yearsBetween } from '@almanac/units/calendar/calendar-day'
import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import { addDays, earlier } from './days.ts'
import type { SupplyPlan } from './firms.ts'
import type { Random } from './random.ts'

export type BedStory = {
  resinKind: RecordedResinKind
  began: string
  ended: string | null
  cause: string | null
}

/** How fast water wears a bed against clean water; a rough stand-in for nature, apart from the forecast's own model. */
function wearRate(supply: SupplyPlan, day: string, carbon: boolean): number {
  const period = supply.periods.filter((one) => one.fromDay === null || one.fromDay <= day).at(-1)
  if (!period) return 1
  const chlorine = carbon ? 0 : (period.residualMgL ?? 0) * (period.disinfectant === 'chloramine' ? 0.9 : 1)
  return (1 + chlorine) ** 0.6 * (1 + period.ironMgL) ** 0.4
}

/** The day a bed that began on `began` is worn out, walking through the water year by year. */
function wornOn(random: Random, supply: SupplyPlan, began: string, resin: BedStory['resinKind'], carbon: boolean): string {
  let left = random.weibull(3.2, resin === 'gel-10' ? 17.5 : 14)
  let day = began
  while (left > 0) {
    const rate = wearRate(supply, day, carbon)
    const step = Math.min(1, left / rate)
    left -= step * rate
    day = addDays(day, step * DAYS_PER_YEAR)
  }
  return day
}

function causeOf(random: Random, supply: SupplyPlan): string {
  const last = supply.periods.at(-1)
  if ((last?.ironMgL ?? 0) > 0.8 && random.chance(0.6)) return 'iron-fouled'
  if (random.chance(0.07)) return 'beads-lost'
  if ((last?.residualMgL ?? 0) > 1 && random.chance(0.45)) return 'oxidised'
  return 'worn'
}

/** All beds of one tank from its installation to the anchor day: each ends and the next begins, as in life; some are taken out early. */
export function bedsOfTank(random: Random, supply: SupplyPlan, installed: string, anchorDay: string, carbon: boolean): BedStory[] {
  const beds: BedStory[] = []
  let began = installed
  for (;;) {
    const modern = began > '2012-01-01'
    const resinKind = random.chance(modern ? 0.3 : 0.1) ? 'gel-10' : random.chance(0.04) ? 'fine-mesh' : 'gel-8'
    const worn = wornOn(random, supply, began, resinKind, carbon)
    const early = random.chance(0.04) ? addDays(began, random.between(2, 8) * 365) : null
    // A worn bed is noticed, and a date found, some weeks later.
    const end = early ? earlier(early, worn) : addDays(worn, random.int(10, 120))
    if (end >= anchorDay) {
      beds.push({ resinKind, began, ended: null, cause: null })
      return beds
    }
    const cause = early === end ? 'removed-for-convenience' : causeOf(random, supply)
    beds.push({ resinKind, began, ended: end, cause })
    began = end
  }
}

/** How a firm's records tell a beginning: exact, by month, by year, "before", or not at all. */
export function asRecorded(
  random: Random,
  began: string,
  anchorDay: string,
): { earliest: string | null; latest: string | null; written: string | null } {
  const age = yearsBetween(began, anchorDay)
  const year = Number(began.slice(0, 4))
  const draw = random.next() + (age > 12 ? 0.18 : 0)
  if (draw < 0.5 || age < 2) return { earliest: began, latest: began, written: began }
  if (draw < 0.6)
    return { earliest: `${began.slice(0, 7)}-01`, latest: addDays(`${began.slice(0, 7)}-28`, 2), written: `${began.slice(5, 7)}/${year}` }
  if (draw < 0.92) return { earliest: `${year}-01-01`, latest: earlier(`${year}-12-31`, anchorDay), written: String(year) }
  if (draw < 1.06) return { earliest: null, latest: `${year}-12-31`, written: `before ${year + 1}` }
  return { earliest: null, latest: null, written: null }
}
