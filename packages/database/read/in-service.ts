import { Prisma } from '../generated/client.ts'

/** A bed that forecasts speak of: neither ended nor put away. The task that takes its forecast away comes a moment after, so every reader asks. */
export const IN_SERVICE = { endedLatest: null, archivedAt: null } as const

/** The same of the bed of `f`, a row of bed_forecast, in SQL. */
export const FORECAST_IN_SERVICE = Prisma.sql`exists (select from bed live where live.company_id = f.company_id and live.id = f.bed_id
  and live.ended_latest is null and live.archived_at is null)`
