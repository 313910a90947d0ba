import { REFERENCE } from '../exposure/acceleration.ts'
import { type ForecastParameters, PARAMETER_KEYS, type ParameterValues } from '../priors/forecast-parameters.ts'
import type { ForecastExplanation } from './bed-forecast-types.ts'
import type { ReadBed } from './read-input.ts'

/** What went in, the formula in words and where its numbers come from. */
export function explanation(bed: ReadBed, parameters: ForecastParameters, values: ParameterValues): ForecastExplanation {
  const { say, fixed, share } = bed.saying
  const [from, to] = [bed.writeDay(bed.earliest), bed.writeDay(bed.latest)]
  const crosslink = share(bed.traits.crosslinkPercent / 100)
  const gallons = fixed(bed.traits.gallonsPerDayPerFt3 ?? REFERENCE.gallonsPerDayPerFt3, 0)
  return {
    formula: say('formula'),
    inputs: [
      { name: say('in/installed'), value: from === to ? from : say('in/between', { from, to }) },
      { name: say('in/seen'), value: bed.writeDay(bed.lastSeen) },
      { name: say('in/crosslink'), value: bed.crosslinkKnown ? crosslink : say('in/assumed', { value: crosslink }) },
      { name: say('in/water'), value: bed.segments.at(-1)?.why ?? '' },
      { name: say('in/use'), value: say('in/perDay', { gallons }) },
      { name: say('in/median'), value: say('in/years', { years: fixed(values.medianCleanYears, 1) }) },
      { name: say('in/shape'), value: fixed(values.shape, 2) },
      { name: say('in/chlorine'), value: fixed(values.chlorineExponent, 2) },
      { name: say('in/chloramine'), value: fixed(values.chloramineWeight, 2) },
      { name: say('in/iron'), value: fixed(values.ironExponent, 2) },
    ],
    parametersVersion: parameters.version,
    sources: PARAMETER_KEYS.map((key) => say(`source/${key}`)),
  }
}
