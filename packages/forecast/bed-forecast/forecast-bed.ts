import { ok, type Result } from '@almanac/units/result'
import { DAYS_PER_YEAR, isoDay } from '../calendar/day-number.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import { centralValues, parameterNodes } from '../priors/parameter-nodes.ts'
import { bedClock, bedDoubt } from './bed-clock.ts'
import type { BedForecast, BedForecastInput, Driver } from './bed-forecast-types.ts'
import { carbonDriver } from './carbon-driver.ts'
import { drivers } from './drivers.ts'
import { explanation } from './explanation.ts'
import { chanceWithin, dueDay, monthTable } from './failure-chances.ts'
import { readInput } from './read-input.ts'
import { survivalCurve } from './survival-curve.ts'
import { dayAtCleanYears, weakness } from './weakness.ts'

/** full: everything a bed's page shows; figures: without the curve, for a run over a whole fleet. */
export type ForecastDetail = 'full' | 'figures'

/**
 * Forecast of one bed: cumulative-exposure accelerated Weibull life over its water history, given that it worked on the day last seen, averaged over
 * the doubt about parameters (the shared nodes of parameterNodes), beginning and unmeasured water. About 0.2 ms. Refuses contradictory dates and
 * negative amounts with a sentence; fills gaps and names each in assumptions and missing.
 */
export function forecastBed(input: BedForecastInput, parameters: ForecastParameters, detail: ForecastDetail = 'full'): Result<BedForecast> {
  const bed = readInput(input, parameters)
  if (!bed.ok) return bed
  const doubt = bedDoubt(bed)
  const clocks = parameterNodes(parameters).map((values) => bedClock(bed, doubt, values))
  const table = monthTable(clocks, bed.asOf)
  const survivalAsOf = table.survival[0] ?? 1
  const due50 = dueDay(clocks, table, bed.lastSeen, 0.5)

  const central = centralValues(parameters)
  const centre = bedClock(bed, doubt, central)
  const begin = (bed.earliest + bed.latest) / 2
  const medianDay = dayAtCleanYears(centre, begin, central.medianCleanYears)
  const medianLifeYears = (medianDay - begin) / DAYS_PER_YEAR
  // A bed that has outlived the typical life is explained up to its own due day, so that a late change of water still shows; the years are then those
  // of a typical life again, or a bed of fourteen years would be told that thirteen were taken from it.
  const horizon = bed.lastSeen > medianDay ? Math.max(medianDay, due50) : medianDay
  const causes: Driver[] = drivers(bed, central, begin, horizon, (medianDay - begin) / (horizon - begin))
  const carbon = carbonDriver(input, bed, parameters, central, begin, medianDay)
  if (carbon !== null) causes.push(carbon)

  const chanceAlreadyFailed = Math.min(1, Math.max(0, 1 - survivalAsOf))
  const value: BedForecast = {
    asOfDay: input.asOfDay,
    lastSeenDay: isoDay(bed.lastSeen),
    beginning: { earliestDay: isoDay(bed.earliest), latestDay: isoDay(bed.latest) },
    due10Day: isoDay(dueDay(clocks, table, bed.lastSeen, 0.1)),
    due50Day: isoDay(due50),
    due90Day: isoDay(dueDay(clocks, table, bed.lastSeen, 0.9)),
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
    exposure: bed.segments.map(({ from: _from, to: _to, ...segment }) => segment),
    weakness: weakness(bed, doubt, centre, central, medianLifeYears, chanceAlreadyFailed),
    curve: detail === 'full' ? survivalCurve(clocks, begin, bed.lastSeen) : [],
    explanation: explanation(bed, parameters, central),
  }
  return ok(value, { assumptions: [...bed.assumptions], missing: [...bed.missing], sources: [...parameters.sources] })
}
