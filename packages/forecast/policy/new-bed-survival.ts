import { type BedTraits, type InletWater, traitsLog, waterLog } from '../exposure/acceleration.ts'
import { lifeSurvival } from '../lifetime/life-curve.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import { parameterNodes } from '../priors/parameter-nodes.ts'

/** Chance that a bed put in today on such water lasts so many years, under each parameter set; `supply` takes that supply's own effect. */
export function newBedLives(
  traits: BedTraits,
  water: InletWater,
  parameters: ForecastParameters,
  supply: string | null = null,
): ((years: number) => number)[] {
  return parameterNodes(parameters).map((node) => {
    const curve = { family: node.family, median: node.medianCleanYears, shape: node.shape }
    const rate = Math.exp(traitsLog(node, { ...traits, supplyLog: node.supplyLog(supply) }) + waterLog(node, water))
    return (years) => lifeSurvival(curve, years * rate)
  })
}

/** The same with the doubt about the parameters averaged in; for ageReplacement. */
export function newBedSurvival(
  traits: BedTraits,
  water: InletWater,
  parameters: ForecastParameters,
  supply: string | null = null,
): (years: number) => number {
  const lives = newBedLives(traits, water, parameters, supply)
  return (years) => lives.reduce((sum, life) => sum + life(years), 0) / lives.length
}
