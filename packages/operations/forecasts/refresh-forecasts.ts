import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readBedFacts, readBedIds } from '@almanac/database/read/bed-inputs'
import { commandTools } from '@almanac/database/run-command'
import { removeForecasts } from '@almanac/database/sql/remove-forecasts'
import { storeForecasts } from '@almanac/database/sql/store-forecasts'
import { dayIn, now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { forecastRow } from './forecast-row.ts'
import { PARAMETERS } from './parameters.ts'

/** Beds in one transaction: short enough that nobody waits, long enough that a company of 50,000 beds is done in a minute. */
const CHUNK = 500

async function startRun(companyId: string, cause: string) {
  return inCompany({ companyId }, async (tx) => {
    const { timeZone } = await tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { timeZone: true } })
    const run = { companyId, runId: newId(), asOfDay: dayIn(timeZone), at: now(), cause }
    await tx.forecastRun.create({
      data: { companyId, id: run.runId, cause, asOfDay: dateOf(run.asOfDay), parametersVersion: PARAMETERS.version, startedAt: run.at },
    })
    return run
  })
}

type Run = Awaited<ReturnType<typeof startRun>>

async function refreshChunk(tx: Tx, run: Run, bedIds: string[]): Promise<void> {
  const beds = await readBedFacts(tx, run.companyId, bedIds)
  const alive = new Set(beds.map((bed) => bed.id))
  await removeForecasts(
    tx,
    run.companyId,
    bedIds.filter((id) => !alive.has(id)),
  )
  await storeForecasts(
    tx,
    run,
    beds.map((bed) => forecastRow(bed, run.asOfDay, PARAMETERS)),
  )
}

async function finishRun(run: Run, beds: number): Promise<void> {
  await inCompany(run, async (tx) => {
    await tx.forecastRun.update({ where: { companyId_id: { companyId: run.companyId, id: run.runId } }, data: { finishedAt: now(), beds } })
    const tools = commandTools(tx, { companyId: run.companyId, personId: null }, 'forecasts.refresh', null)
    await tools.enqueue('forecast-months', {}, run.companyId)
    await tools.enqueue('raise-reminders', {}, run.companyId)
  })
}

async function announce(run: Run, entity: string, id: string): Promise<void> {
  await inCompany(run, (tx) =>
    commandTools(tx, { companyId: run.companyId, personId: null }, 'forecasts.refresh', null).announce(entity, id),
  )
}

/** Recomputes some beds. Running it twice gives the same rows. A bed that has ended, or stands in the workshop, loses its forecast. */
export async function refreshBeds({ companyId, bedIds, cause }: TaskPayloads['forecast-beds']): Promise<void> {
  const run = await startRun(companyId, cause)
  await inCompany({ companyId }, (tx) => refreshChunk(tx, run, bedIds))
  await finishRun(run, bedIds.length)
  for (const id of bedIds.slice(0, 20)) await announce(run, 'bed', id)
}

/** Recomputes every bed of a company, a supply or an import batch, chunk by chunk, each in a transaction of its own. */
export async function refreshCompany({ companyId, waterSupplyId, batchId, cause }: TaskPayloads['forecast-company']): Promise<void> {
  const run = await startRun(companyId, cause)
  let after: string | null = null
  let done = 0
  for (;;) {
    const ids: string[] = await inCompany({ companyId }, async (tx) => {
      const found = await readBedIds(tx, companyId, { waterSupplyId, batchId }, after, CHUNK)
      if (found.length > 0) await refreshChunk(tx, run, found)
      return found
    })
    done += ids.length
    after = ids.at(-1) ?? null
    if (ids.length < CHUNK) break
  }
  await finishRun(run, done)
  await announce(run, 'forecast-run', run.runId)
}
