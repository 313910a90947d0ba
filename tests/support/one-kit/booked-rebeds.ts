import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { sheetRows } from '@almanac/database/read/day-sheet-rows'
import { readStoreDemand } from '@almanac/database/read/store-demand'
import { commandTools } from '@almanac/database/run-command'
import { firmFigures } from '@almanac/operations/shared/firm-figures'
import { reserveKit } from '@almanac/operations/shared/reserve-kit'
import { newId } from '@almanac/runtime/ids'
import { inspector } from '../two-firms.ts'
import type { DemoFirm } from './demo-softeners.ts'

export const DAY = '2027-02-01'

export type BookedRebed = { bedId: string; softenerId: string; jobId: string; visitId: string }

/** A rebed of each of the beds, booked on one sheet with its kit spoken for, and what the firm's sheet, shelves and order list then say. */
export async function bookRebeds({ company }: DemoFirm, bedIds: readonly string[]) {
  const companyId = company.id
  const crewDayId = newId()
  const span = { startsAt: new Date(`${DAY}T14:00:00Z`), endsAt: new Date(`${DAY}T23:00:00Z`) }
  const rebeds = await inCompany(
    { companyId },
    async (tx) => {
      // A bed has one open rebed: what was booked before gives way.
      await tx.visit.updateMany({ where: { companyId, state: 'booked' }, data: { state: 'called-off' } })
      await tx.job.updateMany({ where: { companyId, state: 'booked' }, data: { state: 'called-off' } })
      const beds = await tx.bed.findMany({
        where: { companyId, id: { in: [...bedIds] } },
        select: { id: true, tank: { select: { softener: { select: { id: true, siteId: true } } } } },
      })
      await tx.crewDay.create({ data: { ...{ companyId, id: crewDayId, day: dateOf(DAY) as Date, name: `Sheet ${crewDayId}` }, ...span } })
      const booked = beds.map(({ id, tank }) => {
        const { id: softenerId = '', siteId = '' } = tank.softener ?? {}
        return { bedId: id, softenerId, siteId, jobId: newId(), visitId: newId() }
      })
      await tx.job.createMany({
        data: booked.map(({ bedId, softenerId, siteId, jobId }) => ({
          ...{ companyId, id: jobId, siteId, softenerId, bedId, kind: 'rebed', state: 'booked', minutes: 120, crewSize: 2 },
        })),
      })
      await tx.visit.createMany({
        data: booked.map(({ jobId, visitId }) => ({ ...{ companyId, id: visitId, jobId, crewDayId, state: 'booked' }, ...span })),
      })
      const tools = commandTools(tx, { companyId, personId: null }, 'test', null)
      for (const { bedId, visitId } of booked) await reserveKit(tx, tools, visitId, { kind: 'rebed', bedId })
      return booked as BookedRebed[]
    },
    { timeoutMs: 60_000 },
  )
  await forecast(companyId, bedIds)
  const figures = await inCompany({ companyId }, (tx) => firmFigures(tx, companyId))
  const [sheet] = await inCompany({ companyId }, (tx) => sheetRows(tx, companyId, { id: crewDayId }))
  const reserved = await inCompany({ companyId }, (tx) => tx.kitReservation.findMany({ where: { companyId, visit: { crewDayId } } }))
  return { company, figures, rebeds, sheet, reserved, demand: await readStoreDemand({ companyId }, '2026-11-25') }
}

export type BookedFirm = Awaited<ReturnType<typeof bookRebeds>>

/** Forecasts for the beds, by which the order list finds them; their run is not needed here. */
async function forecast(companyId: string, bedIds: readonly string[]): Promise<void> {
  const db = await inspector()
  await db.query(`set session_replication_role = replica`)
  await db.query(
    `insert into bed_forecast (company_id, id, bed_id, site_id, run_id, as_of_day, computed_at, due50_day, chance_12_months, weakness, month_chances, drivers, assumptions, missing)
     select $1, gen_random_uuid(), id, gen_random_uuid(), gen_random_uuid(), '2026-12-01', now(), '2027-01-01', 0.5, 0, '', '[]', '[]', '[]' from unnest($2::uuid[]) id
     on conflict do nothing`,
    [companyId, bedIds],
  )
  await db.end()
}
