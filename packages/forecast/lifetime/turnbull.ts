import type { LifeRecord } from './life-record.ts'

/** A share of lives ends within (lower, upper]; where within, the records cannot say. */
export interface TurnbullMass {
  readonly lower: number
  readonly upper: number
  readonly share: number
}

const SHORTEST = 1e-12

/**
 * Turnbull's (1976) non-parametric estimate for intervals, exact failures, right censoring and late entry, by self-consistency until no share moves more than
 * 1e-10. Mass stands only where it can: on innermost intervals. The last one has upper = Infinity when a life outlasts all failures. O(steps × records × masses).
 */
export function turnbull(records: readonly LifeRecord[], limit = 20_000): TurnbullMass[] {
  const places = innermost(records)
  const count = places.length
  if (count === 0) return []
  let share = new Float64Array(count).fill(1 / count)
  const spans = records.map((record) => ({
    ...spanOf(places, record),
    weight: record.weight ?? 1,
    entered: firstAfter(places, record.entry ?? 0),
  }))
  for (let step = 0; step < limit; step++) {
    const next = new Float64Array(count)
    for (const { from, to, weight, entered } of spans) {
      if (from >= to) continue
      let inside = 0
      for (let j = from; j < to; j++) inside += share[j] as number
      if (inside <= 0) continue
      for (let j = from; j < to; j++) next[j] = (next[j] as number) + (weight * (share[j] as number)) / inside
      // Lives that ended before this one was met are missing: as many as the share there stands to the share after.
      let after = 0
      for (let j = entered; j < count; j++) after += share[j] as number
      if (after > 0) for (let j = 0; j < entered; j++) next[j] = (next[j] as number) + (weight * (share[j] as number)) / after
    }
    let total = 0
    for (const value of next) total += value
    let moved = 0
    for (let j = 0; j < count; j++) {
      const value = (next[j] as number) / total
      moved = Math.max(moved, Math.abs(value - (share[j] as number)))
      next[j] = value < SHORTEST ? 0 : value
    }
    share = next
    if (moved < 1e-10) break
  }
  return places.map((place, j) => ({ ...place, share: share[j] as number }))
}

interface Place {
  readonly lower: number
  readonly upper: number
}

/** Intervals from a left end to the next right end with no other end between; an exact failure is its own. */
function innermost(records: readonly LifeRecord[]): Place[] {
  const ends: { at: number; left: boolean; exact: boolean }[] = []
  for (const { lower, upper, entry = 0 } of records) {
    const exact = lower === upper
    ends.push({ at: lower, left: true, exact }, { at: upper, left: false, exact })
    if (entry > 0) ends.push({ at: entry, left: true, exact: false })
  }
  // At the same age: an interval that ends there, then exact failures, then intervals open from there on.
  const rank = (end: { left: boolean; exact: boolean }) => (end.exact ? (end.left ? 1 : 2) : end.left ? 3 : 0)
  ends.sort((a, b) => a.at - b.at || rank(a) - rank(b))
  const places: Place[] = []
  for (let i = 1; i < ends.length; i++) {
    const [before, here] = [ends[i - 1], ends[i]]
    if (before?.left && here && !here.left) places.push({ lower: before.at, upper: here.at })
  }
  return places
}

function spanOf(places: readonly Place[], { lower, upper }: LifeRecord): { from: number; to: number } {
  let from = 0
  while (from < places.length && !within(places[from] as Place, lower, upper)) from++
  let to = from
  while (to < places.length && within(places[to] as Place, lower, upper)) to++
  return { from, to }
}

function within(place: Place, lower: number, upper: number): boolean {
  if (place.lower === place.upper) return lower === upper ? place.lower === lower : place.lower > lower && place.upper <= upper
  return place.lower >= lower && place.upper <= upper && lower !== upper
}

function firstAfter(places: readonly Place[], entry: number): number {
  let j = 0
  while (j < places.length && (places[j] as Place).upper <= entry) j++
  return j
}
