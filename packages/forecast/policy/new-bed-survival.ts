import { type BedTraits, type InletWater, traitsLog, waterLog } from '../exposure/acceleration.ts'
import { survival, weibullFromMedian } from '../lifetime/weibull.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import { parameterNodes } from '../priors/parameter-nodes.ts'

/** Chance that a bed put in today on such water lasts so many years, the doubt about the parameters averaged in; for ageReplacement. */
export function newBedSurvival(traits: BedTraits, water: InletWater, parameters: ForecastParameters): (years: number) => number {
  const lives = parameterNodes(parameters).map((values) => ({
    life: weibullFromMedian(values.medianCleanYears, values.shape),
    rate: Math.exp(traitsLog(values, traits) + waterLog(values, water)),
  }))
  return (years) => lives.reduce((sum, { life, rate }) => sum + survival(life, years * rate), 0) / lives.length
}
