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
  /** The same beds in coarser groups, without counting them again. */
  regroup(to: (group: string | null) => string | null): GroupCounter
  /** Largest group first. */
  counts(): GroupCounts[]
}

type Group = { beds: number; overdueNow: number; counter: MonthCounter }

/** A streaming counter of groups. Failures of all groups share the parameter nodes, so that bands do not add up. */
export function groupCounter(months: number): GroupCounter {
  return counterOf(months, new Map())
}

function counterOf(months: number, groups: Map<string | null, Group>): GroupCounter {
  const groupOf = (all: Map<string | null, Group>, name: string | null): Group => {
    const own = all.get(name) ?? { beds: 0, overdueNow: 0, counter: countMonths(months) }
    all.set(name, own)
    return own
  }
  return {
    add(bed) {
      const own = groupOf(groups, bed.group)
      own.beds++
      own.overdueNow += bed.chanceAlreadyFailed
      own.counter.add(bed)
    },
    regroup(to) {
      const coarser = new Map<string | null, Group>()
      for (const [name, { beds, overdueNow, counter }] of groups) {
        const own = groupOf(coarser, to(name))
        own.beds += beds
        own.overdueNow += overdueNow
        own.counter.merge(counter)
      }
      return counterOf(months, coarser)
    },
    counts() {
      return [...groups]
        .map(([group, { beds, overdueNow, counter }]) => ({ group, beds, overdueNow, months: counter.counts() }))
        .sort((a, b) => b.beds - a.beds)
    },
  }
}
