import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { forecastBed } from '../bed-forecast/forecast-bed.ts'
import { parseDay } from '../calendar/day-number.ts'
import { fitBedRecords } from '../fit/fit-bed-records.ts'
import { countMonths } from '../fleet/month-counts.ts'
import { countAtMost } from '../fleet/poisson-binomial.ts'
import { type ForecastParameters, PARAMETER_KEYS, type ParameterValues } from '../priors/forecast-parameters.ts'
import { valuesOf } from '../priors/parameter-nodes.ts'
import { type Random, type SimulatedBed, simulateFirm } from './simulate-firm.ts'

/** Whether the truth lay within each 80 % interval of one simulated firm. */
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
const Z90 = 1.2815515655446004

/**
 * One repetition: a truth drawn from the prior, a firm with a town's switch, late entry and early removals, a fit to its records, and the question whether the
 * 80 % intervals hold the truth: of three parameters, of one bed's due date, of the failures of the next twelve months. One bed a firm, so that trials
 * of different repetitions are independent.
 */
export function coverageTrial(beds: number, random: Random, prior: ForecastParameters): CoverageTrial[] {
  const truth = drawTruth(prior, random)
  const firm = simulateFirm({ beds, truth, asOfDay: AS_OF, lateEntryShare: 0.5, earlyRemovalShare: 0.15 }, random, prior)
  const fit = fitBedRecords(
    firm.map((bed) => bed.record),
    prior,
    AS_OF,
    'simulated',
  )
  const parameters = fit.ok ? fit.value.parameters : prior
  const trials: CoverageTrial[] = (['medianCleanYears', 'shape', 'chloramineWeight'] as const).map((key) => {
    const i = PARAMETER_KEYS.indexOf(key)
    const sd = Math.sqrt(parameters.logCovariance[i * PARAMETER_KEYS.length + i] as number)
    return { name: key, hit: Math.abs(Math.log(truth[key]) - (parameters.logMean[i] as number)) <= Z90 * sd }
  })
  const running = firm.filter((bed) => bed.record.end === null)
  return trials.concat(bedTrial(running, parameters, random), countTrial(running, parameters, random))
}

/** Truth at random from the prior, independent parameters as the trade priors are. */
function drawTruth(prior: ForecastParameters, random: Random): ParameterValues {
  return valuesOf(
    prior.logMean.map((mean, i) => {
      const sd = Math.sqrt(prior.logCovariance[i * PARAMETER_KEYS.length + i] as number)
      return mean + sd * normalQuantile(Math.min(Math.max(random(), 1e-9), 1 - 1e-9), 0, 1)
    }),
  )
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

/** Counts are whole numbers, so that a band of exactly 80 % does not exist: the count's place in its distribution is spread at random within its step. */
function countTrial(running: readonly SimulatedBed[], parameters: ForecastParameters, random: Random): CoverageTrial[] {
  if (running.length === 0) return []
  const counter = countMonths(1)
  const begin = parseDay(AS_OF) ?? Number.NaN
  const end = parseDay('2027-01-01') ?? Number.NaN
  let failures = 0
  for (const bed of running) {
    const result = forecastBed({ ...bed.record, asOfDay: AS_OF }, parameters, 'figures')
    if (!result.ok) throw new RangeError(result.reason)
    counter.add(firstYear(result.value.nodeMonthChances, result.value.monthChances.length))
    if (bed.failsOn >= begin && bed.failsOn < end) failures++
  }
  const counts = counter.distribution(0)
  const below = countAtMost(counts, failures - 1)
  const place = below + random() * (countAtMost(counts, failures) - below)
  return [{ name: 'failures of a year', hit: place >= 0.1 && place <= 0.9 }]
}

/** Twelve months as one bucket, at each node. */
function firstYear(nodeChances: Float64Array, months: number): { monthChances: number[]; nodeMonthChances: Float64Array } {
  const nodes = nodeChances.length / months
  const year = new Float64Array(nodes)
  for (let k = 0; k < nodes; k++) for (let m = 0; m < 12; m++) year[k] = (year[k] as number) + (nodeChances[k * months + m] as number)
  return { monthChances: [year.reduce((sum, chance) => sum + chance, 0) / nodes], nodeMonthChances: year }
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
