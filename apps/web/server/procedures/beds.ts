import 'server-only'
import { readBedPage } from '@almanac/database/read/bed-page'
import { readWeakestRecords } from '@almanac/database/read/weakest-records'
import { explainBed } from '@almanac/operations/forecasts/explain-bed'
import { speakForecast } from '@almanac/operations/forecasts/speak-forecast'
import { changeBedFacts } from '@almanac/operations/softeners/change-bed-facts'
import { inspectBed } from '@almanac/operations/softeners/inspect-bed'
import { can } from '../procedure.ts'

export const beds = {
  page: can('read:site').beds.page.handler(async ({ context: { scope, who }, input }) => {
    const page = await readBedPage(scope, input.bedId)
    if (!page.forecast || page.endedLatest !== null || who.person.language === null) return page
    return { ...page, forecast: await speakForecast(scope, input.bedId, page.forecast, who.company) }
  }),
  explain: can('read:site').beds.explain.handler(({ context: { scope, who }, input }) => explainBed(scope, input.bedId, who.company)),
  askNext: can('change:site').beds.askNext.handler(({ context, input }) => readWeakestRecords(context.scope, input)),
  changeFacts: can('change:site').beds.changeFacts.handler(({ context, input }) => changeBedFacts(context.scope, input)),
  inspect: can('change:site').beds.inspect.handler(({ context, input }) => inspectBed(context.scope, input)),
}
