import type { Tx } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readBedIds, readBedInputs } from '@almanac/database/read/bed-inputs'
import { commandTools } from '@almanac/database/run-command'
import { dropDrafts, showDrafts, storeDrafts } from '@almanac/database/sql/forecast-drafts'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { backtestDue } from './backtest-company.ts'
import { fitCompany } from './fit-company.ts'
import { forecastRow } from './forecast-row.ts'
import { forecastSpeaking } from './forecast-speaking.ts'
import { parametersOf, parametersOfFit } from './parameters.ts'
import { writeMonths } from './sum-months.ts'

/** Beds in one transaction: short enough that nobody waits, long enough that a company of 50,000 beds is done in a minute. */
const CHUNK = 500

/** Beds in one task when a run overtook their own. */
const TASK_BEDS = 200

export type CompanyRunRequest = { companyId: string; cause: string; refits?: boolean; waterSupplyId?: string; batchId?: string }

/**
 * Opens a run of a whole company, supply or batch. Older ones of the same reach that were broken off are given up: this one does their work with newer facts. But a
 * refit that was broken off today is gone on with where it is asked for again: the next try of a task whose worker was killed would else begin anew, and give up what
 * the next start is carrying on.
 */
export async function openCompanyRun(request: CompanyRunRequest): Promise<string> {
  const { companyId, cause, refits = false, waterSupplyId = null, batchId = null } = request
  return inCompany({ companyId }, async (tx) => {
    const { timeZone } = await tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { timeZone: true } })
    const asOfDay = dayIn(timeZone, now())
    const same = { companyId, scope: 'company', refits: true, cause, asOfDay: dateOf(asOfDay), finishedAt: null }
    const begun = refits ? await tx.forecastRun.findFirst({ where: same, select: { id: true } }) : null
    if (begun) return begun.id
    const { fitId, parameters } = await parametersOf(tx, companyId, asOfDay)
    const stale = await tx.forecastRun.findMany({
      where: { companyId, scope: 'company', finishedAt: null, ...(refits ? {} : { refits, waterSupplyId, batchId }) },
      select: { id: true },
    })
    for (const { id } of stale) {
      await tx.forecastRun.updateMany({ where: { companyId, id, finishedAt: null }, data: { finishedAt: now(), beds: 0 } })
      await dropDrafts(tx, { companyId, runId: id })
    }
    const id = newId()
    const data = { cause, scope: 'company', refits, waterSupplyId, batchId, asOfDay: dateOf(asOfDay), startedAt: now() }
    await tx.forecastRun.create({
      data: { companyId, id, ...data, fitId: refits ? null : fitId, parametersVersion: refits ? 'being fitted' : parameters.version },
    })
    return id
  })
}

/** The run, locked against a second worker, or null once it is finished. */
async function lockedRun(tx: Tx, companyId: string, runId: string) {
  await lockRows(tx, companyId, 'forecast_run', [runId])
  const run = await tx.forecastRun.findFirst({ where: { companyId, id: runId, finishedAt: null } })
  return run && { ...run, runId, at: run.startedAt, asOfDay: dayOf(run.asOfDay) ?? '' }
}

type LockedRun = NonNullable<Awaited<ReturnType<typeof lockedRun>>>

/** The fit a run begins with; a run that was broken off after its fit goes on with that. */
async function fitRun(companyId: string, runId: string): Promise<void> {
  const run = await inCompany({ companyId }, (tx) => lockedRun(tx, companyId, runId))
  if (!run?.refits || run.fitId !== null) return
  const fitId = await fitCompany(run)
  await inCompany({ companyId }, async (tx) => {
    const { version } = await tx.forecastFit.findUniqueOrThrow({
      where: { companyId_id: { companyId, id: fitId } },
      select: { version: true },
    })
    await tx.forecastRun.updateMany({ where: { companyId, id: runId, fitId: null }, data: { fitId, parametersVersion: version } })
  })
}

/** Drafts the next chunk and writes down how far the run has come, in one transaction. Answers whether there is more. */
async function draftChunk(companyId: string, runId: string): Promise<boolean> {
  return inCompany({ companyId }, async (tx) => {
    const run = await lockedRun(tx, companyId, runId)
    if (!run) return false
    const at = now()
    const among = { waterSupplyId: run.waterSupplyId ?? undefined, batchId: run.batchId ?? undefined }
    const ids = await readBedIds(tx, companyId, among, run.afterBedId, CHUNK)
    if (ids.length === 0) return false
    const { parameters } = await parametersOfFit(tx, companyId, run.fitId, run.asOfDay)
    const beds = await readBedInputs(tx, companyId, ids)
    const alive = new Set(beds.map((bed) => bed.id))
    const company = await companyFacts(tx, companyId)
    const rows = beds.map((bed) => forecastRow(bed, run.asOfDay, parameters, forecastSpeaking(company)))
    await storeDrafts(
      tx,
      run,
      at,
      rows,
      ids.filter((id) => !alive.has(id)),
    )
    await tx.forecastRun.update({ where: { companyId_id: { companyId, id: runId } }, data: { afterBedId: ids.at(-1) ?? null } })
    return ids.length === CHUNK
  })
}

/** Shows a run whose drafts are all there: beds, month picture, fit and as-of day change in this one transaction. */
async function showRun(companyId: string, runId: string): Promise<void> {
  await inCompany(
    { companyId },
    async (tx) => {
      const run = await lockedRun(tx, companyId, runId)
      if (!run) return
      const { beds, overtaken } = await showDrafts(tx, run, run.waterSupplyId === null && run.batchId === null)
      if (run.refits && run.fitId) await tx.forecastFit.updateMany({ where: { companyId, id: run.fitId }, data: { shownAt: now() } })
      await writeMonths(tx, companyId)
      await tx.forecastRun.update({ where: { companyId_id: { companyId, id: runId } }, data: { finishedAt: now(), beds } })
      await followUp(tx, run, overtaken)
    },
    { timeoutMs: 300_000 },
  )
}

async function followUp(tx: Tx, run: LockedRun, overtaken: string[]): Promise<void> {
  const { companyId, runId } = run
  const tools = commandTools(tx, { companyId, personId: null }, 'forecasts.refresh', null)
  for (let i = 0; i < overtaken.length; i += TASK_BEDS)
    await tools.enqueue('forecast-beds', { bedIds: overtaken.slice(i, i + TASK_BEDS), cause: run.cause })
  await tools.enqueue('raise-reminders', {}, companyId)
  await tools.enqueue('plan-rebeds', {}, companyId)
  if (run.refits && (await backtestDue(tx, companyId))) await tools.enqueue('backtest-company', {}, companyId)
  await tools.announce('forecast-run', runId)
}

/**
 * Carries a run on from wherever it stands to its end. Twice at once, or after a kill, it still ends once and shows one whole run. `midway` is called between the last
 * draft and the showing, for tests of what comes in between.
 */
export async function carryOn(companyId: string, runId: string, midway?: () => Promise<void>): Promise<void> {
  await fitRun(companyId, runId)
  while (await draftChunk(companyId, runId)) {}
  await midway?.()
  await showRun(companyId, runId)
}
