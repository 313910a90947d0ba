import { DAYS_PER_YEAR, type IsoDay, parseDay } from '@almanac/units/calendar/day-number'
import type { BedRecord } from './bed-record.ts'

/** A beginning known less well says little of how long before the first sight it lies. */
const KNOWN_WITHIN_YEARS = 2

/** Before any record: a bed met by the firm may be of any age, here on average twenty years, with the weight of three beds. A guess; common practice, no source. */
const GUESS = { years: 20, beds: 3 } as const

/**
 * Mean years by which beds had begun before the firm met them, from those it met in service whose beginning is on record, as known on the day. What beds of unknown
 * beginning are taken to be like: a firm that looks after softeners from their first year has hardly any old strangers, one that bought a list of customers has.
 */
export function yearsBeforeMet(records: readonly BedRecord[], asOfDay: IsoDay): number {
  let [years, beds] = [GUESS.years * GUESS.beds, GUESS.beds as number]
  for (const { beginning, firstSeenDay } of records) {
    if (firstSeenDay === null || firstSeenDay > asOfDay || beginning.earliestDay === null || beginning.latestDay === null) continue
    const [met, from, to] = [firstSeenDay, beginning.earliestDay, beginning.latestDay].map(parseDay)
    if (met == null || from == null || to == null || from > met || to - from > KNOWN_WITHIN_YEARS * DAYS_PER_YEAR) continue
    years += (met - (from + Math.min(to, met)) / 2) / DAYS_PER_YEAR
    beds++
  }
  return years / beds
}
