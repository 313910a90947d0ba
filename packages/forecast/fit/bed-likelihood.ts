import { DAYS_PER_YEAR } from '../calendar/day-number.ts'
import { ageingParts } from '../exposure/acceleration.ts'
import { log1mExp } from '../lifetime/life-family.ts'
import { PARAMETER_KEYS, type ParameterValues } from '../priors/forecast-parameters.ts'
import type { ReadRecord } from './read-record.ts'

const SIZE = PARAMETER_KEYS.length

/** Wear reached on a day: clean years and their derivative by each log parameter. */
interface Wear {
  years: number
  readonly slope: Float64Array
}

/** One segment under the parameters at hand. */
interface Stretch {
  readonly from: number
  readonly rate: number
  /** Derivative of ln rate by each log parameter. */
  readonly slope: Float64Array
  readonly reached: Wear
}

/**
 * ln likelihood of one record at log parameters `theta`, its gradient added to `gradient`. H = ln 2 · (clean years / median)^shape; failures on a known day
 * bring the density in calendar time, intervals ln(S − S), late entry is divided out; an uncertain beginning is averaged over, numerator and entry apart.
 */
export function bedLogLikelihood(record: ReadRecord, theta: Float64Array, values: ParameterValues, gradient: Float64Array): number {
  const stretches = layOut(record, values)
  const numerator = new LogSum()
  const entry = new LogSum()
  const slope = new Float64Array(SIZE)
  const truncated = record.entry !== Number.NEGATIVE_INFINITY
  for (const { x: begin, weight } of record.beginnings) {
    slope.fill(0)
    numerator.add(Math.log(weight) + endTerm(record, stretches, begin, theta, values, slope), slope)
    if (!truncated) continue
    slope.fill(0)
    entry.add(
      Math.log(weight) - (record.entry > begin ? hazard(wearBetween(stretches, begin, record.entry), theta, values, slope, -1) : 0),
      slope,
    )
  }
  for (let j = 0; j < SIZE; j++) gradient[j] = (gradient[j] as number) + numerator.slope(j) - (truncated ? entry.slope(j) : 0)
  return numerator.value() - (truncated ? entry.value() : 0)
}

/** ln Σ e^(term) with its gradient, kept relative to the largest term. */
class LogSum {
  private top = Number.NEGATIVE_INFINITY
  private sum = 0
  private readonly slopes = new Float64Array(SIZE)

  add(term: number, slope: Float64Array): void {
    if (term > this.top) {
      const shrink = Math.exp(this.top - term)
      this.sum *= shrink
      for (let j = 0; j < SIZE; j++) this.slopes[j] = (this.slopes[j] as number) * shrink
      this.top = term
    }
    const share = Math.exp(term - this.top)
    this.sum += share
    for (let j = 0; j < SIZE; j++) this.slopes[j] = (this.slopes[j] as number) + share * (slope[j] as number)
  }

  value(): number {
    return this.top + Math.log(this.sum)
  }

  slope(j: number): number {
    return (this.slopes[j] as number) / this.sum
  }
}

/** ln of the chance (or density) of how the record ends, given its beginning. */
function endTerm(
  record: ReadRecord,
  stretches: readonly Stretch[],
  begin: number,
  theta: Float64Array,
  values: ParameterValues,
  slope: Float64Array,
): number {
  const lower = wearBetween(stretches, begin, record.lower)
  if (record.upper === Number.POSITIVE_INFINITY) return -hazard(lower, theta, values, slope, -1)
  if (record.upper === record.lower) {
    const h = hazardValue(lower, theta, values)
    addHazardSlope(lower, theta, values, h, slope, 1 / h - 1)
    const stretch = stretchAt(stretches, record.lower)
    for (let j = 2; j < SIZE; j++) slope[j] = (slope[j] as number) + (stretch.slope[j] as number) - (lower.slope[j] as number) / lower.years
    slope[1] = (slope[1] as number) + 1
    return Math.log(h) - h + Math.log((values.shape * stretch.rate) / lower.years)
  }
  const upper = wearBetween(stretches, begin, record.upper)
  const h1 = hazardValue(lower, theta, values)
  const h2 = hazardValue(upper, theta, values)
  // d ln(e^−h1 − e^−h2) = −dh1·e^(d)/(e^d − 1) + dh2/(e^d − 1), d = h2 − h1.
  const gap = Math.max(h2 - h1, 1e-300)
  const odds = 1 / Math.expm1(gap)
  addHazardSlope(lower, theta, values, h1, slope, -(1 + odds))
  addHazardSlope(upper, theta, values, h2, slope, odds)
  return -h1 + log1mExp(gap)
}

function hazardValue(wear: Wear, theta: Float64Array, values: ParameterValues): number {
  return Math.LN2 * Math.exp(values.shape * (Math.log(wear.years) - (theta[0] as number)))
}

/** Adds factor × dH/dtheta. */
function addHazardSlope(wear: Wear, theta: Float64Array, values: ParameterValues, h: number, slope: Float64Array, factor: number): void {
  const by = factor * h * values.shape
  slope[0] = (slope[0] as number) - by
  slope[1] = (slope[1] as number) + by * (Math.log(wear.years) - (theta[0] as number))
  for (let j = 2; j < SIZE; j++) slope[j] = (slope[j] as number) + (by * (wear.slope[j] as number)) / wear.years
}

function hazard(wear: Wear, theta: Float64Array, values: ParameterValues, slope: Float64Array, factor: number): number {
  const h = hazardValue(wear, theta, values)
  addHazardSlope(wear, theta, values, h, slope, factor)
  return h
}

function layOut(record: ReadRecord, values: ParameterValues): Stretch[] {
  const stretches: Stretch[] = []
  const reached: Wear = { years: 0, slope: new Float64Array(SIZE) }
  for (const segment of record.segments) {
    const parts = ageingParts(values, record.traits, segment)
    const weighted = values.chloramineWeight * segment.chloramineMgL
    const slope = Float64Array.of(
      0,
      0,
      parts.freeChlorine + parts.chloramine,
      (values.chlorineExponent * weighted) / (1 + segment.freeChlorineMgL + weighted),
      parts.iron,
      parts.crosslink,
      parts.throughput,
      parts.temperature,
    )
    const total = parts.freeChlorine + parts.chloramine + parts.iron + parts.crosslink + parts.throughput + parts.temperature
    const rate = Math.exp(total) / DAYS_PER_YEAR
    stretches.push({ from: segment.from, rate, slope, reached: { years: reached.years, slope: reached.slope.slice() } })
    const years = Number.isFinite(segment.to) ? rate * (segment.to - segment.from) : 0
    reached.years += years
    for (let j = 2; j < SIZE; j++) reached.slope[j] = (reached.slope[j] as number) + years * (slope[j] as number)
  }
  return stretches
}

function stretchAt(stretches: readonly Stretch[], day: number): Stretch {
  let found = stretches[0] as Stretch
  for (const stretch of stretches) if (stretch.from <= day) found = stretch
  return found
}

function wearBetween(stretches: readonly Stretch[], begin: number, day: number): Wear {
  const a = stretchAt(stretches, begin)
  const b = stretchAt(stretches, day)
  const before = a.rate * (begin - a.from)
  const after = b.rate * (day - b.from)
  const slope = new Float64Array(SIZE)
  for (let j = 2; j < SIZE; j++) {
    slope[j] =
      (b.reached.slope[j] as number) - (a.reached.slope[j] as number) + after * (b.slope[j] as number) - before * (a.slope[j] as number)
  }
  // A bed that ends on its first day has half a day of wear rather than none: ln 0 is no likelihood.
  return { years: Math.max(b.reached.years - a.reached.years + after - before, 0.5 * b.rate), slope }
}
