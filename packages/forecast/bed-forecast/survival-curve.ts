import { DAYS_PER_YEAR, isoDay } from '@almanac/units/calendar/day-number'
import { type BedClock, survivalSinceSeen } from './bed-clock.ts'
import type { CurvePoint } from './bed-forecast-types.ts'

/** Years a curve spans, from the bed's beginning. */
const CURVE_YEARS = 30

/** Yearly points of the chance that the bed still works, given that it worked when last seen: certain until then. */
export function survivalCurve(clocks: readonly BedClock[], begin: number, lastSeen: number): CurvePoint[] {
  const days: number[] = []
  for (let year = 0; year <= CURVE_YEARS; year++) days.push(begin + year * DAYS_PER_YEAR)
  if (lastSeen > begin && !days.includes(lastSeen)) days.push(lastSeen)
  days.sort((a, b) => a - b)
  const chances = new Float64Array(clocks.length)
  return days.map((day) => {
    const point = { day: isoDay(day), yearsSinceBeginning: (day - begin) / DAYS_PER_YEAR }
    if (day <= lastSeen) return { ...point, low: 1, mid: 1, high: 1 }
    let sum = 0
    clocks.forEach((clock, k) => {
      chances[k] = survivalSinceSeen(clock, day)
      sum += chances[k] as number
    })
    chances.sort()
    return { ...point, low: at(chances, 0.1), mid: sum / clocks.length, high: at(chances, 0.9) }
  })
}

/** Quantile of sorted values, straight between neighbours. */
function at(sorted: Float64Array, p: number): number {
  const place = p * (sorted.length - 1)
  const below = Math.floor(place)
  const low = sorted[below] ?? 0
  return low + ((sorted[below + 1] ?? low) - low) * (place - below)
}
