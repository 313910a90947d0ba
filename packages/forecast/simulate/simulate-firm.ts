import { isoDay, parseDay } from '../calendar/day-number.ts'
import { traitsLog, waterLog } from '../exposure/acceleration.ts'
import { traceWater } from '../exposure/water-history.ts'
import type { SupplyPeriod, WaterHistoryInput } from '../exposure/water-types.ts'
import type { BedRecord } from '../fit/bed-record.ts'
import { quantile, weibullFromMedian } from '../lifetime/weibull.ts'
import type { ForecastParameters, ParameterValues } from '../priors/forecast-parameters.ts'

/** A number in [0, 1), from a seeded generator of the caller's. */
export type Random = () => number

export interface FirmPlan {
  readonly beds: number
  readonly truth: ParameterValues
  /** The day of the records; beds went in over the 25 years before. */
  readonly asOfDay: string
  /** Share of beds that came under the firm's eyes only years after they went in. */
  readonly lateEntryShare: number
  /** Share removed for convenience before they failed. */
  readonly earlyRemovalShare: number
}

export interface SimulatedBed {
  readonly record: BedRecord
  /** What happens to it in truth: the day number it fails if left alone. */
  readonly failsOn: number
}

const period = (
  fromDay: string,
  disinfectant: SupplyPeriod['disinfectant'],
  disinfectantMgL: number | null,
  ironMgL: number,
): SupplyPeriod => ({
  fromDay,
  disinfectant,
  disinfectantMgL,
  hardnessGpg: 15,
  ironMgL,
})

/** Three towns, one of which turns to chloramine, and wells with iron: invented. */
const SUPPLIES: readonly (readonly SupplyPeriod[])[] = [
  [period('1990-01-01', 'free-chlorine', 0.6, 0)],
  [period('1990-01-01', 'free-chlorine', 1.6, 0.1)],
  [period('1990-01-01', 'free-chlorine', 0.8, 0), period('2014-05-01', 'chloramine', 2.4, 0)],
  [period('1990-01-01', 'none', null, 0.9)],
  [period('1990-01-01', 'none', null, 0.1)],
]

/**
 * A firm of invented beds with known truth: a town's switch to chloramine, late entry, early removals and yearly visits, for tests of coverage and backtests.
 * Each bed draws its own life; beds that failed before the firm first came are never recorded, as in life.
 */
export function simulateFirm(plan: FirmPlan, random: Random, parameters: ForecastParameters): SimulatedBed[] {
  const asOf = parseDay(plan.asOfDay)
  if (asOf === null) throw new RangeError('A simulated firm needs a real as-of day.')
  const beds: SimulatedBed[] = []
  while (beds.length < plan.beds) {
    const bed = simulateBed(plan, random, parameters, asOf)
    if (bed !== null) beds.push(bed)
  }
  return beds
}

function simulateBed(plan: FirmPlan, random: Random, parameters: ForecastParameters, asOf: number): SimulatedBed | null {
  const begin = asOf - Math.floor(random() * 25 * 365.2425)
  const supply = SUPPLIES[Math.floor(random() * SUPPLIES.length)] as readonly SupplyPeriod[]
  const crosslinkPercent = random() < 0.4 ? 10 : 8
  const gallonsPerDay = Math.round(138 * Math.exp(0.8 * (random() - 0.5)))
  const first = random() < plan.lateEntryShare ? begin + Math.floor(random() * 8 * 365) : begin
  const water: WaterHistoryInput = { supplyPeriods: supply, tests: [], preTreatments: [] }
  const failsOn = failureDay(plan.truth, water, begin, { crosslinkPercent, gallonsPerDayPerFt3: gallonsPerDay / 1.5 }, random(), parameters)
  const removal = random() < plan.earlyRemovalShare ? begin + Math.floor(random() * 20 * 365) : Number.POSITIVE_INFINITY
  // Not yet met, or gone before the firm came: no record.
  if (first >= asOf || Math.min(failsOn, removal) <= first) return null
  const visits = visitsFrom(first, asOf, random)
  const seen = visits.filter((day) => day < Math.min(failsOn, removal))
  const last = seen.at(-1) ?? first
  const day = isoDay(begin)
  return {
    failsOn,
    record: {
      beginning: { earliestDay: day, latestDay: day },
      firstSeenDay: first > begin ? isoDay(first) : null,
      lastSeenDay: isoDay(last),
      visitDays: seen.map(isoDay),
      end: endOf(failsOn, removal, last, asOf, visits[seen.length]),
      crosslinkPercent,
      resinVolumeFt3: 1.5,
      gallonsPerDay,
      water,
    },
  }
}

/** A failure is found at the next visit, so it lies between two; a removal is the firm's own work and known to the day. */
function endOf(failsOn: number, removal: number, last: number, asOf: number, next: number | undefined): BedRecord['end'] {
  if (removal < failsOn)
    return removal <= asOf ? { earliestDay: isoDay(removal), latestDay: isoDay(removal), cause: 'removed-early' } : null
  return next === undefined ? null : { earliestDay: isoDay(last), latestDay: isoDay(next), cause: 'failed' }
}

/** The first meeting and then about one visit a year up to the day. */
function visitsFrom(first: number, asOf: number, random: Random): number[] {
  const visits = []
  for (let day = first; day <= asOf; day += 300 + Math.floor(random() * 130)) visits.push(day)
  return visits
}

function failureDay(
  truth: ParameterValues,
  water: WaterHistoryInput,
  begin: number,
  traits: { crosslinkPercent: number; gallonsPerDayPerFt3: number },
  p: number,
  parameters: ForecastParameters,
): number {
  const traced = traceWater(water, begin, begin + 36_525, parameters.assumedWater)
  if (!traced.ok) throw new RangeError(traced.reason)
  let left = quantile(weibullFromMedian(truth.medianCleanYears, truth.shape), p)
  for (const segment of traced.segments) {
    const rate = Math.exp(traitsLog(truth, traits) + waterLog(truth, segment)) / 365.2425
    const wear = rate * (segment.to - segment.from)
    if (wear >= left) return Math.ceil(segment.from + left / rate)
    left -= wear
  }
  return Number.POSITIVE_INFINITY
}
