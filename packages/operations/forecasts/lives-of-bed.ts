import { inCompany, type Scope } from '@almanac/database/in-company'
import { readBedInputs } from '@almanac/database/read/bed-inputs'
import { forecastBed } from '@almanac/forecast/bed-forecast/forecast-bed'
import { newBedSurvival } from '@almanac/forecast/policy/new-bed-survival'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { parameterNodes } from '@almanac/forecast/priors/parameter-nodes'
import { notFound } from '@almanac/runtime/errors'
import { ok, type Result, refuse } from '@almanac/units/result'
import { companyFacts } from '../shared/company-facts.ts'
import { forecastInput } from './forecast-input.ts'
import { forecastSpeaking } from './forecast-speaking.ts'
import { parametersOf } from './parameters.ts'
import { yearsBySurvival } from './years-by-survival.ts'

export type BedLives = {
  /** Lives of a new bed of 8% on this water, years, equally likely, the doubt about the parameters in them. */
  newBedYears: number[]
  /** How many times as long 10% lasts, equally likely. */
  longerTen: number[]
}

const REFERENCE_CROSSLINK = 8

/** What the forecast model says of a new bed in the place of this one: on the water that reaches it now. Not found for a bed that is out or another company's. */
export async function livesOfBed(scope: Pick<Scope, 'companyId'>, bedId: string): Promise<Result<BedLives>> {
  const { bed, company, parameters } = await inCompany(scope, async (tx) => {
    const company = await companyFacts(tx, scope.companyId)
    const [found] = await readBedInputs(tx, scope.companyId, [bedId])
    return { bed: found, company, parameters: (await parametersOf(tx, scope.companyId, company.today)).parameters }
  })
  if (!bed) throw notFound('bed in service at a site')
  return livesOnItsWater(forecastInput(bed, company.today, forecastSpeaking(company)), parameters)
}

/** The same from the model's input. Refuses a record that contradicts itself, with the sentence that says so. */
export function livesOnItsWater(input: ReturnType<typeof forecastInput>, parameters: ForecastParameters): Result<BedLives> {
  const forecast = forecastBed(input, parameters)
  if (!forecast.ok) return forecast
  const water = forecast.value.exposure.at(-1)
  if (!water) return refuse('We don’t know the water at this bed. Enter its supply or a test.')
  const use = input.gallonsPerDay !== null && input.resinVolumeFt3 !== null ? input.gallonsPerDay / input.resinVolumeFt3 : null
  const traits = { crosslinkPercent: REFERENCE_CROSSLINK, gallonsPerDayPerFt3: use }
  const newBedYears = yearsBySurvival(newBedSurvival(traits, water, parameters, input.supply))
  const longerTen = parameterNodes(parameters).map((values) => Math.exp(values.crosslinkEffect))
  return ok({ newBedYears, longerTen }, forecast)
}
