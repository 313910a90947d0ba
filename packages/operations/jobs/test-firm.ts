import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { newId } from '@almanac/runtime/ids'
import pg from 'pg'
import { testDatabase } from '../../../tests/support/test-database.ts'

/** The day the tests stand on, a Thursday, and the firm's zone: seven hours behind UTC on that day. */
export const DAY = '2026-12-03'
const ZONE = 'America/Phoenix'

/** A company of its own with a person who acts in it. Companies are made outside the app, as at sign-up. */
export async function makeFirm(timeZone = ZONE) {
  const { superUrl } = await testDatabase()
  const db = new pg.Client({ connectionString: superUrl })
  await db.connect()
  const companyId = newId()
  await db.query(
    `insert into company (id, name, time_zone, unit_system, currency) values ($1, 'Quarry Road Soft Water', $2, 'us', 'USD')`,
    [companyId, timeZone],
  )
  await db.end()
  return { companyId, personId: newId() }
}

export type Firm = Awaited<ReturnType<typeof makeFirm>>

export async function makeColleague(firm: Firm, name: string): Promise<string> {
  const id = newId()
  await inCompany(firm, (tx) => tx.colleague.create({ data: { companyId: firm.companyId, id, name } }))
  return id
}

export async function makeVehicle(firm: Firm, name = 'van 2'): Promise<string> {
  const id = newId()
  await inCompany(firm, (tx) => tx.vehicle.create({ data: { companyId: firm.companyId, id, name, volumeFt3: 8, weightLb: 900 } }))
  return id
}

/** A site with one softener, one tank and its present bed. */
export async function makeBed(firm: Firm, label = 'Orchard Lane 14', tank: { diameterIn?: number; heightIn?: number } = {}) {
  const { companyId } = firm
  const [siteId, softenerId, tankId, bedId] = [newId(), newId(), newId(), newId()]
  await inCompany(firm, async (tx) => {
    await tx.site.create({ data: { companyId, id: siteId, label, town: 'Larkmoor' } })
    await tx.softener.create({ data: { companyId, id: softenerId, siteId, label: 'House softener' } })
    await tx.tank.create({ data: { companyId, id: tankId, softenerId, ...{ diameterIn: 10, heightIn: 54, ...tank } } })
    await tx.bed.create({ data: { companyId, id: bedId, tankId, volumeFt3: 1.5, resinKind: 'gel-8' } })
  })
  return { siteId, softenerId, tankId, bedId }
}

/** A stored forecast for a bed, with its due window. */
export async function makeForecast(firm: Firm, place: { siteId: string; bedId: string }, due10: string, due90: string) {
  const { companyId } = firm
  const runId = newId()
  const common = { companyId, asOfDay: dateOf(DAY) }
  await inCompany(firm, async (tx) => {
    await tx.forecastRun.create({ data: { ...common, id: runId, cause: 'nightly', parametersVersion: 't', startedAt: dateOf(DAY) } })
    await tx.bedForecast.create({
      data: {
        ...{ ...common, id: newId(), runId, bedId: place.bedId, siteId: place.siteId, computedAt: dateOf(DAY) },
        ...{ due10Day: dateOf(due10), due50Day: dateOf(due10), due90Day: dateOf(due90), chance3Months: 0.13 },
        ...{ monthChances: new Uint8Array(), drivers: [], assumptions: [], missing: [] },
      },
    })
  })
}

/** Everything of the firm that a refused command could have touched, to compare before and after. */
export async function everythingOf(firm: Firm) {
  return inCompany(firm, async (tx) => {
    const where = { companyId: firm.companyId }
    const orderBy = { id: 'asc' } as const
    const jobs = await tx.job.findMany({ where, orderBy })
    const visits = await tx.visit.findMany({ where, orderBy })
    const sheets = await tx.crewDay.findMany({ where, orderBy, include: { members: { orderBy } } })
    const assignments = await tx.assignment.findMany({ where, orderBy })
    const uses = await tx.vehicleUse.findMany({ where, orderBy })
    const audit = await tx.auditEntry.count({ where })
    const commands = await tx.appliedCommand.count({ where })
    const [tasks] = await tx.$queryRaw<{ count: bigint }[]>`select count(*) from queue.job where data->>'companyId' = ${firm.companyId}`
    return { jobs, visits, sheets, assignments, uses, audit, commands, tasks: Number(tasks?.count) }
  })
}
