import { addPerson } from '@almanac/identity/people'
import { newId } from '@almanac/runtime/ids'
import { sendTaskAlone } from '@almanac/runtime/task-queue'
import pg from 'pg'
import { brackwater, type FirmPlan, larkmoor } from './firms.ts'
import { loadFirm } from './load-firm.ts'
import { DEMO_SIGN_INS } from './sign-ins.ts'

type Options = { migrationUrl: string; anchorDay: string; log: (words: string) => void; seed?: number }

/** Makes the companies, their settings and memberships visible in one transaction: until it commits, there is no demo. */
async function openCompanies(
  migrationUrl: string,
  firms: { id: string; plan: FirmPlan; members: { personId: string; role: string }[] }[],
): Promise<void> {
  const db = new pg.Client({ connectionString: migrationUrl })
  await db.connect()
  try {
    await db.query('begin')
    for (const { id, plan, members } of firms) {
      await db.query(`select set_config('app.company_id', $1, true)`, [id])
      await db.query('insert into company (id, name, time_zone, unit_system, currency) values ($1, $2, $3, $4, $5)', [
        id,
        plan.name,
        plan.timeZone,
        plan.unitSystem,
        plan.currency,
      ])
      await db.query('insert into company_settings (company_id, id, rebeds_per_month) values ($1, $2, $3)', [
        id,
        newId(),
        plan.rebedsPerMonth,
      ])
      for (const { personId, role } of members)
        await db.query('insert into membership (id, person_id, company_id, role) values ($1, $2, $3, $4)', [newId(), personId, id, role])
    }
    await db.query('commit')
    // Fresh tables have no statistics yet, and the first forecasts come before the database would gather them by itself.
    await db.query('analyze')
  } finally {
    await db.end()
  }
}

/**
 * Loads two invented firms as of `anchorDay`, the same for the same seed. Each firm's records go in one transaction and its company's row comes last, so
 * that a load that was killed leaves nothing anyone can see, and the next start loads anew. The worker then forecasts every bed.
 */
export async function loadDemo({ migrationUrl, anchorDay, log, seed = 20261125 }: Options): Promise<void> {
  const ids = new Map<string, string>()
  for (const person of DEMO_SIGN_INS) ids.set(person.name, await addPerson(person))
  const idOf = (name: string) => ids.get(name) ?? ''
  const firms = [
    { id: newId(), plan: larkmoor(anchorDay), members: DEMO_SIGN_INS.map(({ name, role }) => ({ personId: idOf(name), role })) },
    // The dispatcher of the one firm owns the other: a person in two companies.
    { id: newId(), plan: brackwater(), members: [{ personId: idOf('Dell Prior'), role: 'owner' }] },
  ]
  for (const [i, { id, plan }] of firms.entries()) {
    const sites = await loadFirm(id, plan, seed + i, anchorDay, ids)
    log(`${plan.name}: ${sites} sites`)
  }
  await openCompanies(migrationUrl, firms)
  for (const { id } of firms) await sendTaskAlone('forecast-company', { companyId: id, cause: 'import' })
}
