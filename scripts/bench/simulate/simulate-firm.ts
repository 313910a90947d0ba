import type { Inspection } from '@almanac/forecast/bed-forecast/bed-forecast-types'
import { READING_MODELS } from '@almanac/forecast/bed-forecast/inspection-model'
import { type BedTraits, traitsLog, waterLog } from '@almanac/forecast/exposure/acceleration'
import { sayingOf } from '@almanac/forecast/exposure/speaking'
import { traceWater } from '@almanac/forecast/exposure/water-history'
import type { SupplyPeriod, WaterHistoryInput } from '@almanac/forecast/exposure/water-types'
import type { BedRecord } from '@almanac/forecast/fit/bed-record'
import { ageAtLifeHazard } from '@almanac/forecast/lifetime/life-curve'
import type { LifeFamilyName } from '@almanac/forecast/lifetime/life-family'
import type { Random } from '@almanac/forecast/numeric/seeded'
import type { ForecastParameters, ParameterValues } from '@almanac/forecast/priors/forecast-parameters'
import { DAYS_PER_YEAR, isoDay, parseDay } from '@almanac/units/calendar/day-number'
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'

export interface FirmPlan {
  readonly beds: number
  readonly truth: ParameterValues
  /** The day of the records; beds went in over the 25 years before. */
  readonly asOfDay: string
  /** Share of beds that came under the firm's eyes only years after they went in. */
  readonly lateEntryShare: number
  /** Share removed for convenience before they failed. */
  readonly earlyRemovalShare: number
  /** Weibull when left out. */
  readonly family?: LifeFamilyName
  /** Spread of an effect on ln life that the beds of a supply share; when given, records name their supply. */
  readonly supplySpread?: number
  /** Share of visits on which the capacity is measured. */
  readonly measuredShare?: number
  /** The firm's waters, each as likely for a bed; three towns and two wells when left out. */
  readonly waters?: readonly (readonly SupplyPeriod[])[]
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
  const waters = plan.waters ?? SUPPLIES
  const effects = waters.map(() => (plan.supplySpread === undefined ? 0 : plan.supplySpread * normal(random)))
  while (beds.length < plan.beds) {
    const place = Math.floor(random() * waters.length)
    const bed = simulateBed(plan, random, parameters, asOf, place, waters[place] as readonly SupplyPeriod[], effects[place] as number)
    if (bed !== null) beds.push(bed)
  }
  return beds
}

function normal(random: Random): number {
  return normalQuantile(Math.min(Math.max(random(), 1e-9), 1 - 1e-9), 0, 1)
}

function simulateBed(
  plan: FirmPlan,
  random: Random,
  parameters: ForecastParameters,
  asOf: number,
  place: number,
  supply: readonly SupplyPeriod[],
  supplyLog: number,
): SimulatedBed | null {
  const begin = asOf - Math.floor(random() * 25 * DAYS_PER_YEAR)
  const crosslinkPercent = random() < 0.4 ? 10 : 8
  const gallonsPerDay = Math.round(138 * Math.exp(0.8 * (random() - 0.5)))
  const first = random() < plan.lateEntryShare ? begin + Math.floor(random() * 8 * 365) : begin
  const water: WaterHistoryInput = { supplyPeriods: supply, tests: [], preTreatments: [] }
  const traits = { crosslinkPercent, gallonsPerDayPerFt3: gallonsPerDay / 1.5, supplyLog }
  const curve = { family: plan.family ?? ('weibull' as const), median: plan.truth.medianCleanYears, shape: plan.truth.shape }
  const life = ageAtLifeHazard(curve, -Math.log(1 - random()))
  const wear = wearClock(plan.truth, water, begin, traits, parameters)
  const failsOn = Math.ceil(wear.dayAt(life))
  const removal = random() < plan.earlyRemovalShare ? begin + Math.floor(random() * 20 * 365) : Number.POSITIVE_INFINITY
  // Not yet met, or gone before the firm came: no record.
  if (first >= asOf || Math.min(failsOn, removal) <= first) return null
  const visits = visitsFrom(first, asOf, random)
  const seen = visits.filter((day) => day < Math.min(failsOn, removal))
  const last = seen.at(-1) ?? first
  const day = isoDay(begin)
  const end = endOf(failsOn, removal, last, asOf, visits[seen.length])
  return {
    failsOn,
    record: {
      beginning: { earliestDay: day, latestDay: day },
      firstSeenDay: first > begin ? isoDay(first) : null,
      lastSeenDay: isoDay(last),
      visitDays: seen.map(isoDay),
      end,
      crosslinkPercent,
      resinVolumeFt3: 1.5,
      gallonsPerDay,
      water,
      ...(plan.supplySpread === undefined ? {} : { supply: `supply-${place}` }),
      ...(plan.measuredShare === undefined ? {} : { inspections: measured(seen, plan.measuredShare, (on) => wear.at(on) / life, random) }),
    },
  }
}

/** A failure is found at the next visit or when the bed is taken out, so it lies between two days; a removal is the firm's own work and known to the day. */
function endOf(failsOn: number, removal: number, last: number, asOf: number, next: number | undefined): BedRecord['end'] {
  if (removal < failsOn)
    return removal <= asOf ? { earliestDay: isoDay(removal), latestDay: isoDay(removal), cause: 'removed-early' } : null
  const found = Math.min(next ?? Number.POSITIVE_INFINITY, removal)
  return found > asOf ? null : { earliestDay: isoDay(last), latestDay: isoDay(found), cause: 'failed' }
}

/** Capacities as the inspection model has them: each bed its own start and rate of loss, each reading its own noise. */
function measured(visits: readonly number[], share: number, worn: (day: number) => number, random: Random): Inspection[] {
  const { start, startSd, rise, riseSd, noiseSd } = READING_MODELS.capacity
  const [own, slope] = [start + startSd * normal(random), rise + riseSd * normal(random)]
  return visits
    .filter(() => random() < share)
    .map((day) => ({ day: isoDay(day), capacityShare: own + slope * worn(day) + noiseSd * normal(random) }))
}

/** The first meeting and then about one visit a year up to the day. */
function visitsFrom(first: number, asOf: number, random: Random): number[] {
  const visits = []
  for (let day = first; day <= asOf; day += 300 + Math.floor(random() * 130)) visits.push(day)
  return visits
}

/** Wear in clean years since the beginning on a day, and the day it reaches so many. */
function wearClock(
  truth: ParameterValues,
  water: WaterHistoryInput,
  begin: number,
  traits: BedTraits,
  parameters: ForecastParameters,
): { at: (day: number) => number; dayAt: (years: number) => number } {
  const traced = traceWater(water, begin, begin + 36_525, parameters.assumedWater, sayingOf(undefined))
  if (!traced.ok) throw new RangeError(traced.reason)
  const steps = traced.segments.map(({ from, to, ...inlet }) => ({
    from,
    to,
    rate: Math.exp(traitsLog(truth, traits) + waterLog(truth, inlet)) / DAYS_PER_YEAR,
  }))
  return {
    at: (day) => steps.reduce((sum, { from, to, rate }) => sum + Math.max(0, Math.min(day, to) - from) * rate, 0),
    dayAt(years) {
      let left = years
      for (const { from, to, rate } of steps) {
        if (rate * (to - from) >= left) return from + left / rate
        left -= rate * (to - from)
      }
      return Number.POSITIVE_INFINITY
    },
  }
}
