import type { QuestionKey } from '@almanac/records/forecast-question'
import { newId } from '@almanac/runtime/ids'
import type { Tx } from '../client.ts'
import { Prisma } from '../generated/client.ts'
import { lockRows } from './lock-rows.ts'

/** One bed's present forecast as it is stored; dates 'YYYY-MM-DD'. Null figures with a refusal sentence where no forecast could be made. */
export type ForecastRow = {
  bedId: string
  siteId: string
  waterSupplyId: string | null
  due10Day: string | null
  due50Day: string | null
  due90Day: string | null
  chance3Months: number | null
  chance12Months: number | null
  chance24Months: number | null
  chanceAlreadyFailed: number | null
  beganMiddleDay: string | null
  weakness: number
  questionKey: QuestionKey | null
  /** Chances in 65,535ths, node by node. */
  monthChances: Uint16Array
  drivers: unknown
  assumptions: string[]
  missing: string[]
  refusal: string | null
}

export type StoredRun = { companyId: string; runId: string; asOfDay: string; at: Date; cause: string }

/** How far the middle day must move before the move is written to the bed's history. */
const NOTEWORTHY_DAYS = 14

/** A row as JSON carries it: with ids of its own, its chances apart. */
export function plainRow({ monthChances, ...figures }: ForecastRow) {
  const bytes = Buffer.from(monthChances.buffer, monthChances.byteOffset, monthChances.byteLength)
  return { figures: { ...figures, id: newId(), changeId: newId() }, monthChances: bytes.toString('base64') }
}

/** The columns of a row's figures, for jsonb_to_record and jsonb_to_recordset. */
export const FIGURES =
  Prisma.raw(`id uuid, "changeId" uuid, "bedId" uuid, "siteId" uuid, "waterSupplyId" uuid, "due10Day" date, "due50Day" date, "due90Day" date,
  "chance3Months" float8, "chance12Months" float8, "chance24Months" float8, "chanceAlreadyFailed" float8, "beganMiddleDay" date, weakness float8,
  "questionKey" text, drivers jsonb, assumptions jsonb, missing jsonb, refusal text`)

/**
 * Writes forecasts from `source`, a query that yields the figures, "monthBytes" and "computedAt", of the beds named; a row computed later than its own stays. A
 * move of two weeks or more is kept as a change. A bed that has ended or was put away since its facts were read is passed over. The beds stay locked to the end:
 * whoever ends one meanwhile comes after this transaction, and so does the task that takes its forecast away.
 */
export async function writeForecasts(tx: Tx, run: StoredRun, bedIds: readonly string[], source: Prisma.Sql): Promise<void> {
  await lockRows(tx, run.companyId, 'bed', bedIds, 'share')
  const inService = await tx.$queryRaw<{ id: string }[]>`select id from bed
    where company_id = ${run.companyId}::uuid and id = any(${[...bedIds]}::uuid[]) and ended_latest is null and archived_at is null`
  // By their ids and not by a join: of a company just imported the statistics know nothing, and a join then reads every draft anew for each bed, 3,000 × 3,000.
  const ids = inService.map((bed) => bed.id)
  const alive = Prisma.sql`(select n.* from (${source}) n where n."bedId" = any(${ids}::uuid[]))`
  await tx.$executeRaw`
    insert into forecast_change (company_id, id, bed_id, run_id, at, from_due50, to_due50, cause)
    select ${run.companyId}::uuid, n."changeId", n."bedId", ${run.runId}::uuid, ${run.at}, f.due50_day, n."due50Day", ${run.cause}
    from ${alive} n
    join bed_forecast f on f.company_id = ${run.companyId}::uuid and f.bed_id = n."bedId"
    where f.computed_at <= n."computedAt" and f.due50_day is distinct from n."due50Day"
      and (f.due50_day is null or n."due50Day" is null or abs(f.due50_day - n."due50Day") >= ${NOTEWORTHY_DAYS}::int)`
  await tx.$executeRaw`
    insert into bed_forecast as f (company_id, id, bed_id, site_id, water_supply_id, run_id, as_of_day, computed_at, due10_day, due50_day, due90_day,
      chance_3_months, chance_12_months, chance_24_months, chance_already_failed, began_middle_day, weakness, question_key, month_chances, drivers, assumptions,
      missing, refusal)
    select ${run.companyId}::uuid, n.id, n."bedId", n."siteId", n."waterSupplyId", ${run.runId}::uuid, ${run.asOfDay}::date, n."computedAt", n."due10Day",
      n."due50Day", n."due90Day", n."chance3Months", n."chance12Months", n."chance24Months", n."chanceAlreadyFailed", n."beganMiddleDay", n.weakness,
      n."questionKey", n."monthBytes", n.drivers, n.assumptions, n.missing, n.refusal
    from ${alive} n
    order by n."bedId"
    on conflict (company_id, bed_id) do update set site_id = excluded.site_id, water_supply_id = excluded.water_supply_id, run_id = excluded.run_id,
      as_of_day = excluded.as_of_day, computed_at = excluded.computed_at, due10_day = excluded.due10_day, due50_day = excluded.due50_day,
      due90_day = excluded.due90_day, chance_3_months = excluded.chance_3_months, chance_12_months = excluded.chance_12_months,
      chance_24_months = excluded.chance_24_months, chance_already_failed = excluded.chance_already_failed, began_middle_day = excluded.began_middle_day,
      weakness = excluded.weakness, question_key = excluded.question_key, month_chances = excluded.month_chances, drivers = excluded.drivers,
      assumptions = excluded.assumptions, missing = excluded.missing, refusal = excluded.refusal
    where f.computed_at <= excluded.computed_at`
}

/** Rewrites the forecasts of some beds at once. */
export async function storeForecasts(tx: Tx, run: StoredRun, rows: ForecastRow[]): Promise<void> {
  if (rows.length === 0) return
  const plain = JSON.stringify(rows.map(plainRow).map(({ figures, monthChances }) => ({ ...figures, monthChances })))
  await writeForecasts(
    tx,
    run,
    rows.map((row) => row.bedId),
    Prisma.sql`select n.*, decode(n."monthChances", 'base64') as "monthBytes", ${run.at}::timestamptz as "computedAt"
      from jsonb_to_recordset(${plain}::jsonb) as n(${FIGURES}, "monthChances" text)`,
  )
}
