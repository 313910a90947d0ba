import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readBedInputs } from '@almanac/database/read/bed-inputs'
import { commandTools } from '@almanac/database/run-command'
import { removeForecasts } from '@almanac/database/sql/remove-forecasts'
import { storeForecasts } from '@almanac/database/sql/store-forecasts'
import { PRIVATE_WELLS } from '@almanac/records/supply-kind'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { companyFacts } from '../shared/company-facts.ts'
import { carryOn, openCompanyRun } from './company-run.ts'
import { forecastRow } from './forecast-row.ts'
import { forecastSpeaking } from './forecast-speaking.ts'
import { parametersOf } from './parameters.ts'
import { enoughNewRecords } from './refit-due.ts'

/**
 * Recomputes some beds in one transaction, with the parameters of what is shown. Running it twice gives the same rows. A bed that has ended, or stands in the workshop,
 * loses its forecast; where its sample was graded, the other beds of its supply are asked for. Asks for a refit once enough beds have ended since the last.
 */
export async function refreshBeds({ companyId, bedIds, cause }: TaskPayloads['forecast-beds']): Promise<void> {
  await inCompany({ companyId }, async (tx) => {
    const company = await companyFacts(tx, companyId)
    const asOfDay = company.today
    const { fitId, parameters, samples } = await parametersOf(tx, companyId, asOfDay)
    const run = { companyId, runId: newId(), asOfDay, at: now(), cause }
    const data = {
      cause,
      fitId,
      asOfDay: dateOf(run.asOfDay),
      parametersVersion: parameters.version,
      startedAt: run.at,
      finishedAt: run.at,
    }
    await tx.forecastRun.create({ data: { companyId, id: run.runId, ...data, beds: bedIds.length } })
    const beds = await readBedInputs(tx, companyId, bedIds)
    const alive = new Set(beds.map((bed) => bed.id))
    await removeForecasts(
      tx,
      companyId,
      bedIds.filter((id) => !alive.has(id)),
    )
    await storeForecasts(
      tx,
      run,
      beds.map((bed) => forecastRow(bed, run.asOfDay, parameters, forecastSpeaking(company))),
    )
    const tools = commandTools(tx, { companyId, personId: null }, 'forecasts.refresh', null)
    // The sample of a bed taken out speaks for the other beds of its supply, one on a private well for those on every well: they follow at once.
    const graded = new Set(
      samples
        .filter((sample) => bedIds.includes(sample.bedId))
        .map(({ waterSupplyId, record }) => (record.supply === PRIVATE_WELLS ? undefined : waterSupplyId)),
    )
    for (const waterSupplyId of graded) await tools.enqueue('forecast-company', { waterSupplyId, cause })
    await tools.enqueue('forecast-months', {}, companyId)
    await tools.enqueue('raise-reminders', {}, companyId)
    if (await enoughNewRecords(tx, companyId)) await tools.enqueue('refit-company', { cause: 'refit' }, companyId)
    // One notice, however many beds: whatever shows a forecast is fetched again.
    await tools.announce('forecast-run', run.runId)
  })
}

/** Recomputes every bed of a company, a supply or an import batch with the parameters in use; all of them are shown together. */
export async function refreshCompany({ runId, ...request }: TaskPayloads['forecast-company'], midway?: () => Promise<void>): Promise<void> {
  await carryOn(request.companyId, runId ?? (await openCompanyRun(request)), midway)
}

/** Learns from the company's own records, then recomputes every bed with what was learned; all of them are shown together. */
export async function refitCompany({ companyId, cause, runId }: TaskPayloads['refit-company']): Promise<void> {
  await carryOn(companyId, runId ?? (await openCompanyRun({ companyId, cause, refits: true })))
}
