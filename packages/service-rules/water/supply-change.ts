import type { IsoDay } from '@almanac/units/calendar/day-number'

/** The entry in force just before a day; a null day means "as far back as anyone knows", before which nothing is. In any order; withdrawn ones must not be among them. */
export function periodBefore<P extends { fromDay: IsoDay | null }>(periods: readonly P[], fromDay: IsoDay | null): P | null {
  if (fromDay === null) return null
  let found: P | null = null
  for (const period of periods) {
    if (period.fromDay !== null && period.fromDay >= fromDay) continue
    if (found === null || (period.fromDay ?? '') > (found.fromDay ?? '')) found = period
  }
  return found
}

/**
 * What a change of water says of one value: left out (undefined) it is as before, null says that nobody knows it. `before` is null where there is nothing
 * before, or where it was not known.
 */
export function asBefore<V>(told: V | null | undefined, before: V | null): V | null {
  return told === undefined ? before : told
}
