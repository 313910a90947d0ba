import { randomUUID } from 'node:crypto'
import { addPerson } from '@almanac/identity/people'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { sendTask } from '@almanac/runtime/task-queue'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import pg from 'pg'
import { brackwater, type FirmPlan, larkmoorToday } from './firms.ts'
import { loadFirm } from './load-firm.ts'
import { planFirm } from './plan-firm.ts'
import { DEMO_SIGN_INS } from './sign-ins.ts'

type Options = { migrationUrl: string; anchorDay?: string; log: (words: string) => void; seed?: number }

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
      await db.query(
        'insert into company (id, name, time_zone, unit_system, currency, locale, telephone, paper) values ($1, $2, $3, $4, $5, $6, $7, $8)',
        [
          id,
          plan.name,
          plan.timeZone,
          plan.unitSystem,
          plan.currency,
          plan.locale,
          plan.telephone,
          plan.unitSystem === 'us' ? 'letter' : 'a4',
        ],
      )
      await db.query(
        'insert into company_settings (company_id, id, rebeds_per_month, yard_latitude, yard_longitude, lunch_minutes, in_hand_minutes, holiday_area) values ($1, $2, $3, $4, $5, $6, $7, $8)',
        [
          id,
          newId(),
          plan.rebedsPerMonth,
          plan.yard.latitude,
          plan.yard.longitude,
          plan.day.lunchMinutes,
          plan.day.inHandMinutes,
          plan.day.holidayArea,
        ],
      )
      for (const { personId, role } of members)
        await db.query('insert into membership (id, person_id, company_id, role) values ($1, $2, $3, $4)', [newId(), personId, id, role])
      await sendTask('forecast-company', { companyId: id, cause: 'import' }, { executeSql: (text, values) => db.query(text, values) })
    }
    await db.query('commit')
    // Fresh tables have no statistics yet, and the first forecasts come before the database would gather them by itself.
    await db.query('analyze')
  } finally {
    await db.end()
  }
}

const LOCK = 7_261_020

/** Runs `load` unless a company exists; of two loads at once, the second waits and then finds the first one's companies. */
async function whenEmpty(migrationUrl: string, load: () => Promise<void>): Promise<boolean> {
  const db = new pg.Client({ connectionString: migrationUrl })
  await db.connect()
  try {
    await db.query('select pg_advisory_lock($1)', [LOCK])
    const { rowCount } = await db.query('select from company limit 1')
    if (rowCount) return false
    await load()
    return true
  } finally {
    await db.end() // ends the session, and with it the lock
  }
}

/**
 * Loads two invented firms as of `anchorDay`, or else each as of its own day now, the same for the same seed; answers false, and changes nothing, when a company exists. Each firm's records
 * go in one transaction and the companies' rows come last, together with the request for their forecasts: a load that was killed leaves nothing
 * anyone can see, and the next start loads anew. The worker then forecasts every bed and raises the reminders.
 */
export async function loadDemo({ migrationUrl, anchorDay, log, seed = 20261125 }: Options): Promise<boolean> {
  return whenEmpty(migrationUrl, async () => {
    const ids = new Map<string, string>()
    // A password that nobody knows: the set-up gives each its own.
    for (const person of DEMO_SIGN_INS) ids.set(person.name, await addPerson({ ...person, password: randomUUID() }))
    const at = now()
    const anchor = (timeZone: string) => anchorDay ?? dayIn(timeZone, at)
    const firms = [larkmoorToday(anchor), brackwater()].map((plan) => ({
      id: newId(),
      plan,
      members: DEMO_SIGN_INS.filter(({ company }) => company === plan.name).map(({ name, role }) => ({
        personId: ids.get(name) ?? '',
        role: role as string,
      })),
    }))
    // The dispatcher of the one firm owns the other too: a person in two companies.
    firms[1]?.members.push({ personId: ids.get('Dell Prior') ?? '', role: 'owner' })
    for (const [i, { id, plan }] of firms.entries()) {
      await loadFirm(id, planFirm(id, plan, seed + i, anchor(plan.timeZone), ids))
      log(`${plan.name}: ${plan.sites} sites`)
    }
    await openCompanies(migrationUrl, firms)
  })
}
