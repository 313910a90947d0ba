import { civilDate, DAYS_PER_YEAR, isoDay } from '@almanac/units/calendar/day-number'
import { sayingOf } from '../exposure/speaking.ts'
import { traceWater } from '../exposure/water-history.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import type { LifeNode } from '../priors/parameter-nodes.ts'
import { bedClock } from './bed-clock.ts'
import type { BedForecastInput, Driver } from './bed-forecast-types.ts'
import { driverWords } from './drivers.ts'
import type { ReadBed } from './read-input.ts'
import { dayAtCleanYears } from './weakness.ts'

/** Years of typical life that carbon ahead gives: the median life with it less the one without. Null where no carbon stands or it gives nothing. */
export function carbonDriver(
  input: BedForecastInput,
  bed: ReadBed,
  parameters: ForecastParameters,
  values: LifeNode,
  begin: number,
  medianDay: number,
): Driver | null {
  const first = bed.segments.find((segment) => segment.carbonAhead)
  if (first === undefined) return null
  // Tests taken behind the carbon say nothing about the water without it.
  const bare = {
    ...input.water,
    preTreatments: input.water.preTreatments.filter((treatment) => treatment.kind !== 'carbon'),
    tests: input.water.tests.filter((test) => test.point === 'raw'),
  }
  const water = traceWater(bare, bed.earliest, bed.asOf, parameters.assumedWater, sayingOf(undefined))
  if (!water.ok) return null
  const without = bedClock({ ...bed, segments: water.segments }, { beginnings: [{ x: begin, weight: 1 }], doseLogSd: 0 }, values)
  const given = (medianDay - dayAtCleanYears(without, begin, values.medianCleanYears)) / DAYS_PER_YEAR
  if (given < 0.05) return null
  const { say } = bed.saying
  const ahead = say('cause/carbon')
  const cause = first.from > begin ? say('since', { cause: ahead, year: String(civilDate(first.from).year) }) : ahead
  return { key: 'carbon', yearsTaken: -given, fromDay: isoDay(first.from), words: driverWords(cause, -given, bed.saying) }
}
