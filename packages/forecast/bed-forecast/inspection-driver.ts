import { DAYS_PER_YEAR, isoDay, parseDay } from '@almanac/units/calendar/day-number'
import type { BedClock } from './bed-clock.ts'
import type { BedForecastInput, Driver, MeasurementGain } from './bed-forecast-types.ts'
import { driverWords } from './drivers.ts'
import { dueDay, monthTable } from './failure-chances.ts'
import { READING_MODELS, type Readings, readInspections } from './inspection-model.ts'
import type { ReadBed } from './read-input.ts'

/** Readings up to the day of the forecast and since the bed's earliest beginning; null where nothing was found that says something. */
export function bedReadings(input: BedForecastInput, bed: ReadBed): Readings | null {
  if (input.inspections === undefined || input.inspections.length === 0) return null
  return readInspections(
    input.inspections,
    (day) => {
      const number = day === null ? null : parseDay(day)
      return number === null || number > bed.asOf || number < bed.earliest ? null : number
    },
    bed.saying,
  )
}

/** Years by which the inspections moved the middle due date; null where hardly. `plain` are the same clocks without them. */
export function inspectionDriver(readings: Readings, plain: readonly BedClock[], bed: ReadBed, due50: number): Driver | null {
  const taken = (dueDay(plain, monthTable(plain, bed.asOf), bed.lastSeen, 0.5) - due50) / DAYS_PER_YEAR
  if (Math.abs(taken) < 0.05) return null
  const fromDay = isoDay(Math.min(...readings.days))
  return { key: 'inspection', yearsTaken: taken, fromDay, words: driverWords(readings.words.at(-1) ?? '', taken, bed.saying) }
}

/**
 * What measuring the capacity today would take from the doubt about the remaining life, for the life's spread `remainingSd` in years: the reading's variance
 * over lives that are still possible against that with its noise.
 */
export function capacityGain(wornNow: number, remainingSd: number, remainingMean: number, ageYears: number): MeasurementGain {
  const { rise, riseSd, noiseSd, startSd } = READING_MODELS.capacity
  // Worn share x = age/(age + remaining); by the delta rule its spread over the possible lives is x · sd/(age + remaining).
  const spread = (wornNow * remainingSd) / Math.max(0.5, ageYears + remainingMean)
  const signal = (rise * spread) ** 2
  const noise = noiseSd ** 2 + startSd ** 2 + (riseSd * wornNow) ** 2
  return {
    key: 'inspection',
    years: remainingSd * Math.sqrt(signal / (signal + noise)),
  }
}
