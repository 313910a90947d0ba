import { forecastBed } from '@almanac/forecast/bed-forecast/forecast-bed'
import { ageAlone, FAMILY_BELIEF, NO_EFFECT_BELIEF, SPREAD_PRIOR } from '@almanac/forecast/fit/choose-models'
import { fitBedRecords } from '@almanac/forecast/fit/fit-bed-records'
import type { LogNormal } from '@almanac/forecast/fit/life-posterior'
import { countMonths } from '@almanac/forecast/fleet/month-counts'
import { countAtMost } from '@almanac/forecast/fleet/poisson-binomial'
import type { LifeFamilyName } from '@almanac/forecast/lifetime/life-family'
import type { Random } from '@almanac/forecast/numeric/seeded'
import {
  type ForecastParameters,
  PARAMETER_KEYS,
  type ParameterKey,
  type ParameterValues,
} from '@almanac/forecast/priors/forecast-parameters'
import { valuesOf } from '@almanac/forecast/priors/parameter-nodes'
import { parseDay } from '@almanac/units/calendar/day-number'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { parameterPlace } from './parameter-place.ts'
import { type SimulatedBed, simulateFirm } from './simulate-firm.ts'

/** Whether the truth lay within each 80% interval of one simulated firm. */
export interface CoverageTrial {
  readonly name: string
  readonly hit: boolean
}

export interface Coverage {
  readonly name: string
  readonly trials: number
  readonly coverage: number
  readonly standardError: number
}

const AS_OF = '2026-01-01'

/** Parameters looked at: those that this simulation's waters can teach. */
export const STUDIED: readonly ParameterKey[] = [
  'medianCleanYears',
  'shape',
  'chlorineExponent',
  'chloramineWeight',
  'ironExponent',
  'crosslinkEffect',
  'throughputExponent',
]

/** A month of the near future, and the first twelve together. */
const COUNTED = [
  { name: 'failures of a month', from: 5, to: 6 },
  { name: 'failures of a year', from: 0, to: 12 },
] as const

/**
 * One repetition: a truth drawn from all that the forecast believes beforehand (parameters, distribution of life, whether the water acts at all, how far supplies differ),
 * a firm with a town's switch, late entry and early removals, a fit to its records, and the question whether the 80% intervals hold the truth. One bed a
 * firm, so that trials of different repetitions are independent.
 */
export function coverageTrial(beds: number, random: Random, prior: ForecastParameters): CoverageTrial[] {
  const truth = drawTruth(random() < NO_EFFECT_BELIEF ? ageAlone(prior) : prior, random)
  const plan = {
    beds,
    truth,
    asOfDay: AS_OF,
    lateEntryShare: 0.5,
    earlyRemovalShare: 0.15,
    family: drawFamily(random),
    supplySpread: Math.exp(SPREAD_PRIOR.logMean + SPREAD_PRIOR.logSd * normal(random)),
    measuredShare: 0.1,
  }
  const firm = simulateFirm(plan, random, prior)
  const fit = fitBedRecords(
    firm.map((bed) => bed.record),
    prior,
    AS_OF,
    'simulated',
  )
  const parameters = fit.ok ? fit.value.parameters : prior
  const trials: CoverageTrial[] = STUDIED.map((key) => ({ name: key, hit: inside(parameterPlace(parameters, key, truth[key])) }))
  const running = firm.filter((bed) => bed.record.end === null)
  return trials.concat(bedTrial(running, parameters, random), countTrials(running, parameters, random))
}

const inside = (place: number) => place >= 0.1 && place <= 0.9

function normal(random: Random): number {
  return normalQuantile(Math.min(Math.max(random(), 1e-9), 1 - 1e-9), 0, 1)
}

/** Truth at random from a prior with independent parameters, as the trade priors are. */
function drawTruth(prior: LogNormal, random: Random): ParameterValues {
  return valuesOf(
    prior.logMean.map((mean, i) => mean + Math.sqrt(prior.logCovariance[i * PARAMETER_KEYS.length + i] as number) * normal(random)),
  )
}

function drawFamily(random: Random): LifeFamilyName {
  let left = random()
  for (const [family, belief] of Object.entries(FAMILY_BELIEF)) {
    left -= belief
    if (left < 0) return family as LifeFamilyName
  }
  return 'weibull'
}

function bedTrial(running: readonly SimulatedBed[], parameters: ForecastParameters, random: Random): CoverageTrial[] {
  const bed = running[Math.floor(random() * running.length)]
  if (bed === undefined) return []
  const result = forecastBed({ ...bed.record, asOfDay: AS_OF }, parameters, 'figures')
  if (!result.ok) throw new RangeError(result.reason)
  const low = parseDay(result.value.due10Day) ?? Number.NaN
  const high = parseDay(result.value.due90Day) ?? Number.NaN
  return [{ name: 'due date', hit: bed.failsOn > low && bed.failsOn <= high + 1 }]
}

/** Counts are whole numbers, so that a band of exactly 80% does not exist: the count's place in its distribution is spread at random within its step. */
function countTrials(running: readonly SimulatedBed[], parameters: ForecastParameters, random: Random): CoverageTrial[] {
  if (running.length === 0) return []
  const counters = COUNTED.map(() => countMonths(1))
  const failures = COUNTED.map(() => 0)
  for (const bed of running) {
    const result = forecastBed({ ...bed.record, asOfDay: AS_OF }, parameters, 'figures')
    if (!result.ok) throw new RangeError(result.reason)
    const { nodeMonthChances, monthChances } = result.value
    COUNTED.forEach(({ from, to }, i) => {
      counters[i]?.add(together(nodeMonthChances, monthChances.length, from, to))
      if (bed.failsOn >= monthDay(from) && bed.failsOn < monthDay(to)) failures[i] = (failures[i] as number) + 1
    })
  }
  return COUNTED.map(({ name }, i) => {
    const counts = (counters[i] as ReturnType<typeof countMonths>).distribution(0)
    const below = countAtMost(counts, (failures[i] as number) - 1)
    return { name, hit: inside(below + random() * (countAtMost(counts, failures[i] as number) - below)) }
  })
}

/** First day of the month so many after the day of the study. */
function monthDay(later: number): number {
  return parseDay(`${2026 + Math.floor(later / 12)}-${String((later % 12) + 1).padStart(2, '0')}-01`) ?? Number.NaN
}

/** Months [from, to) as one bucket, at each node. */
function together(nodeChances: Float64Array, months: number, from: number, to: number) {
  const nodes = nodeChances.length / months
  const sums = new Float64Array(nodes)
  for (let k = 0; k < nodes; k++) for (let m = from; m < to; m++) sums[k] = (sums[k] as number) + (nodeChances[k * months + m] as number)
  return { monthChances: [sums.reduce((sum, chance) => sum + chance, 0) / nodes], nodeMonthChances: sums }
}

/** Shares of hits by name with their binomial standard errors. */
export function tallyCoverage(trials: readonly CoverageTrial[]): Coverage[] {
  const byName = new Map<string, { trials: number; hits: number }>()
  for (const { name, hit } of trials) {
    const tally = byName.get(name) ?? { trials: 0, hits: 0 }
    byName.set(name, { trials: tally.trials + 1, hits: tally.hits + (hit ? 1 : 0) })
  }
  return [...byName].map(([name, tally]) => {
    const coverage = tally.hits / tally.trials
    return { name, trials: tally.trials, coverage, standardError: Math.sqrt((coverage * (1 - coverage)) / tally.trials) }
  })
}
