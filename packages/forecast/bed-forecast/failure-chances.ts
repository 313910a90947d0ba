import { addMonths, monthStart } from '@almanac/units/calendar/day-number'
import { type BedClock, cleanYearsAt, survivalAtWear, survivalSinceSeen } from './bed-clock.ts'

/** Calendar months a forecast looks ahead. */
const FORECAST_MONTHS = 60

/** Chance of still working on a day given that it worked when last seen: the mean over parameter nodes. */
function meanSurvival(clocks: readonly BedClock[], day: number): number {
  let sum = 0
  for (const clock of clocks) sum += survivalSinceSeen(clock, day)
  return sum / clocks.length
}

export interface MonthTable {
  /** FORECAST_MONTHS + 1 day numbers: as-of day, then the first day of each following month. */
  readonly edges: readonly number[]
  /** Mean survival at each edge. */
  readonly survival: Float64Array
  readonly chances: number[]
  readonly nodeChances: Float64Array
}

/** Chance of failing in each calendar month from `asOf` on, at each node and on average. */
export function monthTable(clocks: readonly BedClock[], asOf: number): MonthTable {
  const edges = [asOf]
  for (let m = 1; m <= FORECAST_MONTHS; m++) edges.push(monthStart(asOf, m))
  const survival = new Float64Array(edges.length)
  const chances = new Array<number>(FORECAST_MONTHS).fill(0)
  const nodeChances = new Float64Array(clocks.length * FORECAST_MONTHS)
  const atEdges = new Float64Array(edges.length)
  clocks.forEach((clock, k) => {
    survivalAtEdges(clock, edges, atEdges)
    for (let m = 0; m < FORECAST_MONTHS; m++) {
      const before = atEdges[m] as number
      const chance = Math.max(0, before - (atEdges[m + 1] as number))
      nodeChances[k * FORECAST_MONTHS + m] = chance
      chances[m] = (chances[m] as number) + chance / clocks.length
      survival[m] = (survival[m] as number) + before / clocks.length
    }
    survival[FORECAST_MONTHS] = (survival[FORECAST_MONTHS] as number) + (atEdges[FORECAST_MONTHS] as number) / clocks.length
  })
  return { edges, survival, chances, nodeChances }
}

/** Knots between the first and the last edge; the cubic between them is off by less than 1e-4, mostly by 1e-7, at a third of the cost. */
const KNOTS = 16
const knotValue = new Float64Array(KNOTS + 1)
const knotSlope = new Float64Array(KNOTS + 1)
const pair = new Float64Array(2)

/** A fall between two knots from which on the cubic is no longer good to 1e-4, and the edges between them are reckoned one by one. */
const STEEP = 0.05

/**
 * Survival at each edge by cubic Hermite interpolation in clean years, where it is smooth even when the water changes between two edges; edge by edge where it falls
 * steeply, or where the cubic would not fall all the way (Fritsch and Carlson 1980: slopes beyond three times the chord's).
 */
function survivalAtEdges(clock: BedClock, edges: readonly number[], out: Float64Array): void {
  const first = cleanYearsAt(clock, edges[0] as number)
  const step = (cleanYearsAt(clock, edges[edges.length - 1] as number) - first) / KNOTS
  for (let n = 0; n <= KNOTS; n++) {
    survivalAtWear(clock, first + n * step, pair)
    knotValue[n] = pair[0] as number
    knotSlope[n] = (pair[1] as number) * step
  }
  for (let e = 0; e < edges.length; e++) {
    const place = (cleanYearsAt(clock, edges[e] as number) - first) / step
    const n = Math.min(KNOTS - 1, Math.max(0, Math.floor(place)))
    const x = place - n
    const y = 1 - x
    const fall = (knotValue[n] as number) - (knotValue[n + 1] as number)
    if (fall > STEEP || Math.min(knotSlope[n] as number, knotSlope[n + 1] as number) < -3 * fall) {
      survivalAtWear(clock, cleanYearsAt(clock, edges[e] as number), pair)
      out[e] = pair[0] as number
      continue
    }
    const start = (knotValue[n] as number) * (1 + 2 * x) + (knotSlope[n] as number) * x
    const end = (knotValue[n + 1] as number) * (1 + 2 * y) - (knotSlope[n + 1] as number) * y
    out[e] = start * y * y + end * x * x
  }
}

/** Chance of failing within `months` after `asOf`, given that it still works then. */
export function chanceWithin(clocks: readonly BedClock[], asOf: number, survivalAsOf: number, months: number): number {
  if (survivalAsOf <= 0) return 1
  return Math.min(1, Math.max(0, 1 - meanSurvival(clocks, addMonths(asOf, months)) / survivalAsOf))
}

/** First day (fraction kept) by which the chance of having failed since last seen reaches p. */
export function dueDay(clocks: readonly BedClock[], table: MonthTable, lastSeen: number, p: number): number {
  const target = 1 - p
  const { edges, survival } = table
  const asOf = edges[0] ?? lastSeen
  if ((survival[0] ?? 1) <= target) return solve(clocks, target, lastSeen, 1, asOf, survival[0] ?? 0)
  for (let m = 1; m < edges.length; m++) {
    const after = survival[m] ?? 0
    if (after > target) continue
    const before = survival[m - 1] ?? 1
    const from = edges[m - 1] ?? asOf
    // Within one month survival is as good as straight.
    return before === after ? from : from + (((edges[m] ?? from) - from) * (before - target)) / (before - after)
  }
  let low = edges.at(-1) ?? asOf
  let lowSurvival = survival.at(-1) ?? 1
  for (let step = 1500; ; step *= 2) {
    const high = low + step
    const highSurvival = meanSurvival(clocks, high)
    // A bed whose chance does not reach p in 500 years is beyond any calendar; the day is cut off there.
    if (highSurvival <= target || step > 100_000) return solve(clocks, target, low, lowSurvival, high, highSurvival)
    low = high
    lowSurvival = highSurvival
  }
}

/** Regula falsi with the Illinois rule between two days that bracket the target; to within half a day. */
function solve(clocks: readonly BedClock[], target: number, low: number, lowSurvival: number, high: number, highSurvival: number): number {
  let [a, fa, b, fb] = [low, lowSurvival - target, high, highSurvival - target]
  if (fa <= 0) return a
  for (let i = 0; i < 60 && b - a > 0.5 && fb < 0; i++) {
    const middle = i > 12 ? (a + b) / 2 : a + ((b - a) * fa) / (fa - fb)
    const f = meanSurvival(clocks, middle) - target
    if (Math.abs(f) < 1e-5) return middle
    if (f > 0) {
      a = middle
      fa = f
      fb /= 2
    } else {
      b = middle
      fb = f
      fa /= 2
    }
  }
  return b
}
