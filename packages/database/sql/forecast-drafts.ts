import { newId } from '@almanac/runtime/ids'
import type { Tx } from '../client.ts'
import { Prisma } from '../generated/client.ts'
import { FIGURES, type ForecastRow, plainRow, type StoredRun, writeForecasts } from './store-forecasts.ts'

/** Writes drafts of a company run: a row for each bed forecast, and an empty one for each that has none any more. `at`: before the facts were read. */
export async function storeDrafts(tx: Tx, run: StoredRun, at: Date, rows: ForecastRow[], gone: string[]): Promise<void> {
  const plain = JSON.stringify([
    ...rows.map((row) => ({ id: newId(), bedId: row.bedId, ...plainRow(row) })),
    ...gone.map((bedId) => ({ id: newId(), bedId, figures: null, monthChances: '' })),
  ])
  await tx.$executeRaw`
    insert into forecast_draft (company_id, id, run_id, bed_id, computed_at, figures, month_chances)
    select ${run.companyId}::uuid, n.id, ${run.runId}::uuid, n."bedId", ${at}, coalesce(n.figures, 'null'), decode(n."monthChances", 'base64')
    from jsonb_to_recordset(${plain}::jsonb) as n(id uuid, "bedId" uuid, figures jsonb, "monthChances" text)
    on conflict (company_id, run_id, bed_id) do nothing`
}

/**
 * Shows a whole run: its drafts become the beds' forecasts in this one transaction. With `everyBed`, forecasts of beds the run did not meet go, unless they were made
 * after it began. Answers the beds whose forecast was made anew while the run was under way, with the parameters it replaces.
 */
export async function showDrafts(tx: Tx, run: StoredRun, everyBed: boolean): Promise<{ beds: number; overtaken: string[] }> {
  const drafts = Prisma.sql`from forecast_draft d where d.company_id = ${run.companyId}::uuid and d.run_id = ${run.runId}::uuid`
  const drafted = await tx.$queryRaw<{ bedId: string }[]>`select d.bed_id as "bedId" ${drafts} and d.figures <> 'null'`
  await writeForecasts(
    tx,
    run,
    drafted.map((row) => row.bedId),
    Prisma.sql`select r.*, d.month_chances as "monthBytes", d.computed_at as "computedAt" from forecast_draft d, jsonb_to_record(d.figures) as r(${FIGURES})
      where d.company_id = ${run.companyId}::uuid and d.run_id = ${run.runId}::uuid and d.figures <> 'null'`,
  )
  await tx.$executeRaw`
    delete from bed_forecast f where f.company_id = ${run.companyId}::uuid and f.run_id <> ${run.runId}::uuid and (
      exists (select ${drafts} and d.bed_id = f.bed_id and d.figures = 'null' and f.computed_at <= d.computed_at)
      or (${everyBed} and f.computed_at < ${run.at} and not exists (select ${drafts} and d.bed_id = f.bed_id)))`
  const overtaken = await tx.$queryRaw<{ bedId: string }[]>`
    select f.bed_id as "bedId" from bed_forecast f where f.company_id = ${run.companyId}::uuid and f.run_id <> ${run.runId}::uuid
      and f.computed_at > ${run.at}`
  const beds = await tx.$executeRaw`delete ${drafts} and d.figures <> 'null'`
  await dropDrafts(tx, run)
  return { beds, overtaken: overtaken.map((row) => row.bedId) }
}

/** Takes away the drafts of a run that will not be shown, or has been. */
export async function dropDrafts(tx: Tx, run: { companyId: string; runId: string }): Promise<void> {
  await tx.forecastDraft.deleteMany({ where: { companyId: run.companyId, runId: run.runId } })
}
