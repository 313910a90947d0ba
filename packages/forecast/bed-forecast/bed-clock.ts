import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import { traitsLog, waterLog } from '../exposure/acceleration.ts'
import type { TracedSegment } from '../exposure/water-history.ts'
import { ageAtLifeHazard, type LifeCurve, lifeHazard, lifeHazardRate } from '../lifetime/life-curve.ts'
import { weibullFromMedian } from '../lifetime/weibull.ts'
import { NORMAL_NODES, type WeightedNode } from '../numeric/gauss-nodes.ts'
import { type ForecastParameters, PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import type { LifeNode } from '../priors/parameter-nodes.ts'
import { TRADE_PRIORS } from '../priors/trade-priors.ts'
import { beginningNodes } from './beginning-nodes.ts'
import { type Readings, readingsLogLikelihood } from './inspection-model.ts'
import type { ReadBed } from './read-input.ts'
import { KNOTS, type Tilt, tilted, tiltFrom } from './tilt.ts'

/**
 * How one bed ages under one set of parameters. A clean year is a year of wear on clean water; cleanYearsAt(day) = ∫ rate dt since the earliest
 * possible beginning. Components stand for what is uncertain about this bed alone: its beginning, whether its household would have called, and the strength of
 * water nobody measured.
 */
export interface BedClock {
  readonly curve: LifeCurve
  /** Of a Weibull life, for the inner loop. */
  readonly scale: number
  /** Segment starts as day numbers, clean years per day from there on, and clean years reached there. */
  readonly from: readonly number[]
  readonly rate: readonly number[]
  readonly reached: readonly number[]
  /** One entry a possible beginning and household: clean years reached then. */
  readonly beganAt: Float64Array
  /** One entry a possible strength of the water: factor on wear, and on a Weibull hazard. */
  readonly strength: Float64Array
  readonly hazardFactor: Float64Array
  /** One entry a component (beginning, household, strength): hazard when last known to work, and chance of the component given that it worked then. */
  readonly hazardSeen: Float64Array
  readonly weight: Float64Array
  /** One entry a component: what inspections make of its chances; null without inspections. */
  readonly tilts: readonly Tilt[] | null
}

/** What is uncertain about one bed alone, the same for every parameter set. */
export interface BedDoubt {
  readonly beginnings: readonly WeightedNode[]
  /** Standard deviation of ln(1 + oxidants) at the inlet from water nobody measured; 0 when measured. Times the chlorine exponent it is that of the log rate. */
  readonly doseLogSd: number
}

export function bedDoubt(bed: ReadBed, parameters: ForecastParameters): BedDoubt {
  return { beginnings: beginningNodes(bed), doseLogSd: doseLogSd(bed.segments, unlearnedShare(parameters)) }
}

/**
 * Doubt about the dose where water was not measured: a common-practice guess, no source. The newest segment decides; it rules the future. Records are mostly of
 * beds whose supply alone is known, so that the spread of lives learned from them holds that doubt already: it fades as the spread is learned. A supply that
 * nobody knows stays as doubtful as it was.
 */
function doseLogSd(segments: readonly TracedSegment[], unlearned: number): number {
  const now = segments.at(-1)
  if (now === undefined || now.disinfectantOrigin === 'measured') return 0
  if (now.disinfectantOrigin === 'assumed') return now.carbonAhead ? 0.14 : 0.43
  return unlearned * (now.freeChlorineMgL + now.chloramineMgL > 0 ? 0.17 : 0.07)
}

/** How much of the trade's doubt about the spread of lives is left: 1 before any record. */
function unlearnedShare({ logCovariance }: ForecastParameters): number {
  const place = PARAMETER_KEYS.indexOf('shape')
  return Math.min(1, Math.sqrt(logCovariance[place * PARAMETER_KEYS.length + place] ?? 0) / TRADE_PRIORS.shape.logSd)
}

/** The clock of a bed at one node; `readings` null leaves inspections out. */
export function bedClock(bed: ReadBed, doubt: BedDoubt, node: LifeNode, readings: Readings | null = null): BedClock {
  const curve: LifeCurve = { family: node.family, median: node.medianCleanYears, shape: node.shape }
  const constant = traitsLog(node, { ...bed.traits, supplyLog: node.supplyLog(bed.supply) })
  const from: number[] = []
  const rate: number[] = []
  const reached: number[] = []
  let sum = 0
  for (const segment of bed.segments) {
    const perDay = Math.exp(constant + waterLog(node, segment)) / DAYS_PER_YEAR
    from.push(segment.from)
    rate.push(perDay)
    reached.push(sum)
    sum += perDay * (segment.to - segment.from)
  }
  const waterLogSd = doubt.doseLogSd * node.chlorineExponent
  const strengths = waterLogSd > 1e-3 ? NORMAL_NODES : [{ x: 0, weight: 1 }]
  const households = householdsOf(bed, node)
  const size = doubt.beginnings.length * households.length * strengths.length
  const clock = {
    curve,
    scale: weibullFromMedian(curve.median, curve.shape).scale,
    from,
    rate,
    reached,
    beganAt: new Float64Array(doubt.beginnings.length * households.length),
    strength: Float64Array.from(strengths, ({ x }) => Math.exp(waterLogSd * x)),
    hazardFactor: Float64Array.from(strengths, ({ x }) => Math.exp(node.shape * waterLogSd * x)),
    hazardSeen: new Float64Array(size),
    weight: new Float64Array(size),
    tilts: null as Tilt[] | null,
  }
  const known = households.map(({ knownUntil }) => cleanYearsAt(clock, knownUntil))
  doubt.beginnings.forEach((beginning, b) => {
    const beganAt = cleanYearsAt(clock, beginning.x)
    households.forEach((household, h) => {
      const m = b * households.length + h
      clock.beganAt[m] = beganAt
      strengths.forEach((strength, j) => {
        const i = m * strengths.length + j
        clock.hazardSeen[i] = lifeHazard(curve, Math.max(0, (known[h] as number) - beganAt) * (clock.strength[j] as number))
        clock.weight[i] = beginning.weight * household.share * strength.weight
      })
    })
  })
  if (readings !== null) clock.tilts = tilts(clock, readings)
  conditionOnSeen(clock)
  return clock
}

/** Kinds of household, with the day up to which the bed works in each: one that would have called, and one of whom nothing is known but the day last seen. */
function householdsOf({ unheardUntil, lastSeen }: ReadBed, node: LifeNode): { readonly share: number; readonly knownUntil: number }[] {
  if (unheardUntil === null) return [{ share: 1, knownUntil: lastSeen }]
  const calls = node.callOdds / (1 + node.callOdds)
  return [
    { share: calls, knownUntil: unheardUntil },
    { share: 1 - calls, knownUntil: lastSeen },
  ]
}

const logs = new Float64Array(KNOTS.length)

/** Each component's chances after the inspections: the readings' likelihood at lives through the whole of what is left. */
function tilts(clock: Omit<BedClock, 'weight' | 'tilts'>, readings: Readings): Tilt[] {
  const { days } = readings
  const worn = new Float64Array(days.length)
  const out: Tilt[] = []
  for (let i = 0; i < clock.hazardSeen.length; i++) {
    const beganAt = clock.beganAt[Math.floor(i / clock.strength.length)] as number
    const strength = clock.strength[i % clock.strength.length] as number
    const ages = days.map((day) => Math.max(0, cleanYearsAt(clock, day) - beganAt) * strength)
    for (let k = 0; k < KNOTS.length; k++) {
      const left = KNOTS[k] as number
      const life = left === 0 ? Number.POSITIVE_INFINITY : ageAtLifeHazard(clock.curve, (clock.hazardSeen[i] as number) - Math.log(left))
      for (let d = 0; d < ages.length; d++) worn[d] = life > 0 ? (ages[d] as number) / life : 2
      logs[k] = readingsLogLikelihood(readings, worn)
    }
    out.push(tiltFrom(logs))
  }
  return out
}

/** Bayes: a component under which the bed would hardly have lasted to the day last seen, or been found so, loses weight. Scaled by the likeliest, so never 0/0. */
function conditionOnSeen(clock: { hazardSeen: Float64Array; weight: Float64Array; tilts: readonly Tilt[] | null }): void {
  const logOf = (i: number) => (clock.tilts?.[i]?.logEvidence ?? 0) - (clock.hazardSeen[i] ?? 0)
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < clock.weight.length; i++) most = Math.max(most, logOf(i))
  let total = 0
  for (let i = 0; i < clock.weight.length; i++) {
    clock.weight[i] = (clock.weight[i] ?? 0) * Math.exp(logOf(i) - most)
    total += clock.weight[i] ?? 0
  }
  for (let i = 0; i < clock.weight.length; i++) clock.weight[i] = (clock.weight[i] ?? 0) / total
}

export function cleanYearsAt(clock: Pick<BedClock, 'from' | 'rate' | 'reached'>, day: number): number {
  let g = clock.from.length - 1
  while (g > 0 && (clock.from[g] ?? 0) > day) g--
  return (clock.reached[g] ?? 0) + (clock.rate[g] ?? 0) * (day - (clock.from[g] ?? 0))
}

/** Chance that the bed still works on `day` (on or after the day last seen), given that it worked when last seen. */
export function survivalSinceSeen(clock: BedClock, day: number): number {
  survivalAtWear(clock, cleanYearsAt(clock, day), scratch)
  return scratch[0] as number
}

const scratch = new Float64Array(2)
const pair = new Float64Array(2)

/** The same at so many clean years, into out[0], with its slope per clean year into out[1]. The innermost loop of a fleet's forecast. */
export function survivalAtWear(clock: BedClock, cleanYears: number, out: Float64Array): void {
  if (clock.curve.family !== 'weibull' || clock.tilts !== null) {
    survivalInGeneral(clock, cleanYears, out)
    return
  }
  const { beganAt, hazardFactor, hazardSeen, weight, scale } = clock
  const { shape } = clock.curve
  let sum = 0
  let slope = 0
  let i = 0
  for (let m = 0; m < beganAt.length; m++) {
    const age = (cleanYears - (beganAt[m] as number)) / scale
    // exp(log) is twice as fast as a power here.
    const hazard = age > 0 ? Math.exp(shape * Math.log(age)) : 0
    const rate = age > 0 ? (shape * hazard) / (age * scale) : 0
    for (let j = 0; j < hazardFactor.length; j++, i++) {
      const factor = hazardFactor[j] as number
      const since = hazard * factor - (hazardSeen[i] as number)
      // Before the day up to which it is known to work nothing can have happened.
      if (since < 0) {
        sum += weight[i] as number
        continue
      }
      const part = (weight[i] as number) * Math.exp(-since)
      sum += part
      slope -= part * factor * rate
    }
  }
  out[0] = sum
  out[1] = slope
}

function survivalInGeneral(clock: BedClock, cleanYears: number, out: Float64Array): void {
  const { beganAt, strength, hazardSeen, weight, curve, tilts: after } = clock
  let sum = 0
  let slope = 0
  let i = 0
  for (let m = 0; m < beganAt.length; m++) {
    for (let j = 0; j < strength.length; j++, i++) {
      const age = (cleanYears - (beganAt[m] as number)) * (strength[j] as number)
      const left = Math.min(1, Math.exp((hazardSeen[i] as number) - lifeHazard(curve, age)))
      const fall = left < 1 ? -left * lifeHazardRate(curve, age) * (strength[j] as number) : 0
      const tilt = after?.[i]
      if (tilt === undefined) {
        pair[0] = left
        pair[1] = 1
      } else tilted(tilt, left, pair)
      sum += (weight[i] as number) * (pair[0] as number)
      slope += (weight[i] as number) * (pair[1] as number) * fall
    }
  }
  out[0] = sum
  out[1] = slope
}
