import { percentInSentence } from '@almanac/units/format-number'
import { REFERENCE } from '../exposure/acceleration.ts'
import type { ForecastParameters, ParameterValues } from '../priors/forecast-parameters.ts'
import type { ForecastExplanation } from './bed-forecast-types.ts'
import type { ReadBed } from './read-input.ts'

const FORMULA =
  'A bed ages faster than on clean water by (1 + free chlorine + weight × chloramine)^exponent × (1 + iron)^exponent, slower with 10% crosslink. ' +
  'Its wear is that rate added up over the dated water history, in clean years. Lives in clean years follow a distribution with this median and shape (Weibull, lognormal or log-logistic, averaged by what the records favor). ' +
  'The due dates are its 10, 50 and 90% points given that the bed worked when last seen and what inspections found, averaged over what is uncertain: the parameters, the day it went in, water nobody measured.'

/** What went in, the formula in words and where its numbers come from. */
export function explanation(bed: ReadBed, parameters: ForecastParameters, values: ParameterValues): ForecastExplanation {
  const [from, to] = [bed.writeDay(bed.earliest), bed.writeDay(bed.latest)]
  const began = from === to ? from : `between ${from} and ${to}`
  const now = bed.segments.at(-1)
  return {
    formula: FORMULA,
    inputs: [
      { name: 'Resin installed', value: began },
      { name: 'Last seen working', value: bed.writeDay(bed.lastSeen) },
      { name: 'Crosslink', value: `${percentInSentence(bed.traits.crosslinkPercent / 100)}${bed.crosslinkKnown ? '' : ' (assumed)'}` },
      { name: 'Water now', value: now?.why ?? '' },
      { name: 'Use', value: `${Math.round(bed.traits.gallonsPerDayPerFt3 ?? REFERENCE.gallonsPerDayPerFt3)} gal/day per ft³` },
      { name: 'Median life on clean water', value: `${values.medianCleanYears.toFixed(1)} years` },
      { name: 'Shape of the life distribution', value: values.shape.toFixed(2) },
      { name: 'Chlorine exponent', value: values.chlorineExponent.toFixed(2) },
      { name: 'Chloramine weight', value: values.chloramineWeight.toFixed(2) },
      { name: 'Iron exponent', value: values.ironExponent.toFixed(2) },
    ],
    parametersVersion: parameters.version,
    sources: parameters.sources,
  }
}
