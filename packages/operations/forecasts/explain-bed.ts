import type { ShownFit } from '@almanac/contract/forecasts'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { readBedInputs } from '@almanac/database/read/bed-inputs'
import { readShownFit } from '@almanac/database/read/shown-fit'
import type { BedForecast } from '@almanac/forecast/bed-forecast/bed-forecast-types'
import { forecastBed } from '@almanac/forecast/bed-forecast/forecast-bed'
import { notFound } from '@almanac/runtime/errors'
import type { DayDisplay } from '@almanac/units/format-day'
import type { Result } from '@almanac/units/result'
import { companyFacts } from '../shared/company-facts.ts'
import { forecastInput } from './forecast-input.ts'
import { forecastSpeaking } from './forecast-speaking.ts'
import { parametersOf } from './parameters.ts'

export type ExplainedBed = Result<Omit<BedForecast, 'nodeMonthChances'> & { fit: ShownFit | null }>

/**
 * One bed's forecast with all that stands behind it: curve, drivers, exposure, formula, inputs, sources. Computed afresh from the record (about a
 * millisecond), by the same function and parameters as the stored figures, in its reader’s language. Not found for a bed that has ended or is another company's.
 */
export async function explainBed(scope: Pick<Scope, 'companyId'>, bedId: string, reader: DayDisplay): Promise<ExplainedBed> {
  const { bed, company, used, fit } = await inCompany(scope, async (tx) => {
    const company = await companyFacts(tx, scope.companyId)
    const [found] = await readBedInputs(tx, scope.companyId, [bedId])
    return {
      bed: found,
      company,
      used: await parametersOf(tx, scope.companyId, company.today),
      fit: await readShownFit(tx, scope.companyId),
    }
  })
  if (!bed) throw notFound('bed in service')
  const result = forecastBed(forecastInput(bed, company.today, forecastSpeaking(reader)), used.parameters)
  if (!result.ok) return result
  const { nodeMonthChances: _nodes, ...value } = result.value
  return { ...result, value: { ...value, fit } }
}
