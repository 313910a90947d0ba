import { newId } from '@almanac/runtime/ids'
import pg from 'pg'
import { testDatabase } from '../../../tests/support/test-database.ts'

/** The day the tests stand on, a Thursday, and the firm's zone: seven hours behind UTC on that day. */
export const DAY = '2026-12-03'
export const ZONE = 'America/Phoenix'

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
