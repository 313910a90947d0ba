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

/** Takes beds one at a time; their arrays are read at once and may be reused. */
export interface GroupCounter {
  add(bed: GroupedChances): void
  /** Largest group first. */
  counts(): GroupCounts[]
}

/** A streaming counter of groups. Failures of all groups share the parameter nodes, so that bands do not add up. */
export function groupCounter(months: number): GroupCounter {
  const groups = new Map<string | null, { beds: number; overdueNow: number; counter: MonthCounter }>()
  return {
    add(bed) {
      const own = groups.get(bed.group) ?? { beds: 0, overdueNow: 0, counter: countMonths(months) }
      own.beds++
      own.overdueNow += bed.chanceAlreadyFailed
      own.counter.add(bed)
      groups.set(bed.group, own)
    },
    counts() {
      return [...groups]
        .map(([group, { beds, overdueNow, counter }]) => ({ group, beds, overdueNow, months: counter.counts() }))
        .sort((a, b) => b.beds - a.beds)
    },
  }
}
