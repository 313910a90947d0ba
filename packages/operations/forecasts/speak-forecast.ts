import type { StoredForecast } from '@almanac/contract/beds'
import type { Scope } from '@almanac/database/in-company'
import type { DayDisplay } from '@almanac/units/format-day'
import { explainBed } from './explain-bed.ts'
import { forecastSpeaking } from './forecast-speaking.ts'

/** A stored forecast, which is kept in the company's language, in the language of a person who reads another; its figures stay. */
export async function speakForecast(
  scope: Pick<Scope, 'companyId'>,
  bedId: string,
  stored: StoredForecast,
  reader: DayDisplay,
): Promise<StoredForecast> {
  const said = await explainBed(scope, bedId, reader)
  if (!said.ok) return { ...stored, drivers: [], assumptions: [], missing: [], refusal: said.reason }
  const refusal = stored.refusal === null ? null : forecastSpeaking(reader).words('no/chance')
  const drivers = said.value.drivers.map(({ key, yearsTaken, words }) => ({ key, yearsTaken, words }))
  return { ...stored, drivers, assumptions: said.assumptions, missing: said.missing, refusal }
}
