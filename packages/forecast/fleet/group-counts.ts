import { countMonths, type MonthChances, type MonthCount, type MonthCounter } from './month-counts.ts'

/** What a bed belongs to (a supply, an area, a kind of resin): null where that is not known. */
export interface GroupedChances extends MonthChances {
  readonly group: string | null
  /** Chance that it has failed already, unnoticed (BedForecast.chanceAlreadyFailed). */
  readonly chanceAlreadyFailed: number
}

export interface GroupCounts {
  readonly group: string | null
  readonly beds: number
  /** Beds that have probably failed already and that nobody has noticed: due now, apart from the months, which count failures still to come. */
  readonly overdueNow: number
  readonly months: readonly MonthCount[]
}

/** The month picture of each group, largest first; streams the beds once. Failures of all groups share the parameter nodes, so that bands do not add up. */
export function countGroups(beds: Iterable<GroupedChances>, months: number): GroupCounts[] {
  const groups = new Map<string | null, { beds: number; overdueNow: number; counter: MonthCounter }>()
  for (const bed of beds) {
    const own = groups.get(bed.group) ?? { beds: 0, overdueNow: 0, counter: countMonths(months) }
    own.beds++
    own.overdueNow += bed.chanceAlreadyFailed
    own.counter.add(bed)
    groups.set(bed.group, own)
  }
  return [...groups]
    .map(([group, { beds: count, overdueNow, counter }]) => ({ group, beds: count, overdueNow, months: counter.counts() }))
    .sort((a, b) => b.beds - a.beds)
}
