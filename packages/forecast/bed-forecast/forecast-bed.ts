import { DAYS_PER_YEAR, isoDay } from '@almanac/units/calendar/day-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import { TENTH_TO_TENTH } from '../numeric/tenth-to-tenth.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import { centralValues, parameterNodes } from '../priors/parameter-nodes.ts'
import { bedClock, bedDoubt } from './bed-clock.ts'
import type { BedForecast, BedForecastInput, Driver, MeasurementGain, Weakness } from './bed-forecast-types.ts'
import { carbonDriver } from './carbon-driver.ts'
import { drivers } from './drivers.ts'
import { explanation } from './explanation.ts'
import { chanceWithin, dueDay, monthTable } from './failure-chances.ts'
import { bedReadings, capacityGain, inspectionDriver } from './inspection-driver.ts'
import { type ReadBed, readInput } from './read-input.ts'
import { survivalCurve } from './survival-curve.ts'
import { dayAtCleanYears, weakness } from './weakness.ts'

/** full: everything a bed's page shows; figures: without the curve, for a run over a whole fleet. */
export type ForecastDetail = 'full' | 'figures'

/**
 * Forecast of one bed: cumulative-exposure accelerated life over its water history, given that it worked on the day last seen, averaged over
 * the doubt about parameters (the shared nodes of parameterNodes), beginning and unmeasured water, and updated by what inspections found. About 0.2 ms,
 * with inspections 2 ms. Refuses contradictory dates and
 * negative amounts with a sentence; fills gaps and names each in assumptions and missing.
 */
export function forecastBed(input: BedForecastInput, parameters: ForecastParameters, detail: ForecastDetail = 'full'): Result<BedForecast> {
  const bed = readInput(input, parameters)
  if (!bed.ok) return bed
  const doubt = bedDoubt(bed, parameters)
  const readings = bedReadings(input, bed)
  const nodes = parameterNodes(parameters)
  const clocks = nodes.map((node) => bedClock(bed, doubt, node, readings))
  const table = monthTable(clocks, bed.asOf)
  if (!areChances(table.nodeChances) || !areChances(table.survival)) return refuse(bed.saying.say('no/number'))
  const survivalAsOf = table.survival[0] ?? 1
  const due50 = dueDay(clocks, table, bed.lastSeen, 0.5)

  const central = centralValues(parameters)
  const centralBed = { ...bed, traits: { ...bed.traits, supplyLog: central.supplyLog(bed.supply) } }
  const centre = bedClock(bed, doubt, central)
  const begin = (bed.earliest + bed.latest) / 2
  const medianDay = dayAtCleanYears(centre, begin, central.medianCleanYears)
  const medianLifeYears = (medianDay - begin) / DAYS_PER_YEAR
  // A bed that has outlived the typical life is explained up to its own due day, so that a late change of water still shows; the years are then those
  // of a typical life again, or a bed of fourteen years would be told that thirteen were taken from it.
  const horizon = bed.lastSeen > medianDay ? Math.max(medianDay, due50) : medianDay
  const causes: Driver[] = drivers(centralBed, central, begin, horizon, (medianDay - begin) / (horizon - begin))
  const carbon = carbonDriver(input, bed, parameters, central, begin, medianDay)
  if (carbon !== null) causes.push(carbon)
  if (readings !== null) {
    const plain = nodes.map((node) => bedClock(bed, doubt, node))
    const moved = inspectionDriver(readings, plain, bed, due50)
    if (moved !== null) causes.push(moved)
  }

  const chanceAlreadyFailed = Math.min(1, Math.max(0, 1 - survivalAsOf))
  const due10 = dueDay(clocks, table, bed.lastSeen, 0.1)
  const due90 = dueDay(clocks, table, bed.lastSeen, 0.9)
  const weak = weakness(bed, doubt, centre, central, medianLifeYears, chanceAlreadyFailed)
  const value: BedForecast = {
    asOfDay: input.asOfDay,
    lastSeenDay: isoDay(bed.lastSeen),
    beginning: { earliestDay: isoDay(bed.earliest), latestDay: isoDay(bed.latest) },
    due10Day: isoDay(due10),
    due50Day: isoDay(due50),
    due90Day: isoDay(due90),
    chanceAlreadyFailed,
    chance3Months: chanceWithin(clocks, bed.asOf, survivalAsOf, 3),
    chance12Months: chanceWithin(clocks, bed.asOf, survivalAsOf, 12),
    chance24Months: chanceWithin(clocks, bed.asOf, survivalAsOf, 24),
    firstMonth: input.asOfDay.slice(0, 7),
    monthChances: table.chances,
    nodeMonthChances: table.nodeChances,
    medianLifeYears,
    medianCleanLifeYears: central.medianCleanYears,
    drivers: causes,
    exposure: bed.segments.map(({ from: _from, to: _to, disinfectantWhy: _why, ...segment }) => segment),
    weakness: weak,
    sharpest: sharpest(weak, bed, medianLifeYears, begin, due10, due50, due90),
    curve: detail === 'full' ? survivalCurve(clocks, begin, bed.lastSeen) : [],
    explanation: explanation(bed, parameters, central),
  }
  return ok(value, {
    assumptions: readings === null ? [...bed.assumptions] : [...bed.assumptions, bed.saying.say('readings')],
    missing: [...bed.missing],
    sources: [...parameters.sources],
  })
}

/** Rounding may leave a chance a hair above 1, nothing more. */
function areChances(values: Float64Array): boolean {
  return values.every((value) => value >= 0 && value <= 1 + 1e-9)
}

/** Answers and measurements by what they would take from the doubt; measuring the capacity competes with asking. */
function sharpest(
  weak: Weakness,
  bed: ReadBed,
  lifeYears: number,
  begin: number,
  due10: number,
  due50: number,
  due90: number,
): MeasurementGain | null {
  const spread = (due90 - due10) / DAYS_PER_YEAR / TENTH_TO_TENTH
  const age = (bed.asOf - begin) / DAYS_PER_YEAR
  const remaining = Math.max(0, (due50 - bed.asOf) / DAYS_PER_YEAR)
  const capacity = capacityGain(Math.min(1, age / Math.max(lifeYears, age + remaining)), spread, remaining, age)
  const best = [...weak.byCause, capacity].reduce((most, one) => (one.years > most.years ? one : most))
  return best.years < NOTICEABLE_GAIN_YEARS ? null : best
}

/** Less than a month of doubt is not worth a visit. */
const NOTICEABLE_GAIN_YEARS = 0.08
