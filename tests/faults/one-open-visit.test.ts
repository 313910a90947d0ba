import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testDatabase } from '../support/test-database.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

const NAME = '20261129163000_one_open_visit'
const migrations = path.resolve(import.meta.dirname, '../../prisma/migrations')
const engine: { migrate: (url: string, folder: string) => Promise<string[]> } = await import(
  path.resolve(import.meta.dirname, '../../packages/database/engine/migrate.mjs')
)

let db: pg.Client
let firm: FirmRecords
let folder: string

/** Another booked visit of a job, with its person and its part of the stores, as the last release let anyone make. */
async function bookAgain(jobId: string, from: string, until: string): Promise<string> {
  const { rows } = await db.query<{ id: string }>(
    `insert into visit (company_id, id, job_id, crew_day_id, starts_at, ends_at, state) values ($1, gen_random_uuid(), $2, $3, $4, $5, 'booked') returning id`,
    [firm.companyId, jobId, firm.otherCrewDayId, from, until],
  )
  const id = rows[0]?.id ?? ''
  await db.query(
    `insert into assignment (company_id, id, visit_id, colleague_id, starts_at, ends_at) values ($1, gen_random_uuid(), $2, $3, $4, $5)`,
    [firm.companyId, id, firm.otherColleagueId, from, until],
  )
  await db.query(
    `insert into kit_reservation (company_id, id, visit_id, stock_item_id, quantity, state) values ($1, gen_random_uuid(), $2, $3, 1, 'reserved')`,
    [firm.companyId, id, firm.stockItemId],
  )
  return id
}
const one = async (sql: string, id: string) => (await db.query(sql, [firm.companyId, id])).rows[0]

beforeAll(async () => {
  db = await inspector()
  firm = await makeFirmRecords(db)
  await makeFirmRecords(db)
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'migrations-'))
  fs.cpSync(migrations, folder, { recursive: true })
})
afterAll(async () => {
  fs.rmSync(folder, { recursive: true })
  await closeClients()
  await db.end()
})

test('an update mends jobs that were booked twice: one visit stays, the others are off their sheets, kept and told of', async () => {
  await db.query('drop index visit_one_open')
  const second = await bookAgain(firm.bookedJobId, '2026-12-04T18:00Z', '2026-12-04T19:00Z')
  const besideWork = await bookAgain(firm.rebedJobId, '2026-12-04T15:00Z', '2026-12-04T16:00Z')
  const leftOver = await bookAgain(firm.heldJobId, '2026-12-04T20:00Z', '2026-12-04T21:00Z')
  const cameBack = await bookAgain(firm.proposedJobId, '2026-12-04T22:00Z', '2026-12-04T23:00Z')
  const all = () => db.query('select count(*)::int as n from visit').then((found) => found.rows[0].n)
  const before = await all()
  // The same statements once more, as a release that finds such rows.
  fs.cpSync(path.join(migrations, NAME), path.join(folder, '20990101000001_again'), { recursive: true })
  await engine.migrate((await testDatabase()).migrationUrl, folder)

  const visit = 'select state, version, notes from visit where company_id = $1 and id = $2'
  const job = 'select state from job where company_id = $1 and id = $2'
  expect(await one(visit, firm.visitId)).toMatchObject({ state: 'booked' })
  expect(await one(visit, firm.rebedVisitId)).toMatchObject({ state: 'under-way' })
  expect(await one(visit, cameBack)).toMatchObject({ state: 'booked' })
  expect(await one(job, firm.proposedJobId)).toEqual({ state: 'booked' })
  expect(await one(job, firm.heldJobId)).toEqual({ state: 'held' })
  for (const id of [second, besideWork, leftOver]) {
    expect(await one(visit, id)).toMatchObject({
      state: 'called-off',
      version: 2,
      notes: expect.stringContaining('Taken off by an update'),
    })
    expect(await one('select released from assignment where company_id = $1 and visit_id = $2', id)).toEqual({ released: true })
    expect(await one('select state from kit_reservation where company_id = $1 and visit_id = $2', id)).toEqual({ state: 'returned' })
    const audit = `select operation from audit_entry where company_id = $1 and entity_id = $2 and detail ? 'why'`
    expect(await one(audit, id)).toEqual({ operation: 'called off' })
  }
  expect(await all()).toBe(before)
  await expect(bookAgain(firm.bookedJobId, '2026-12-05T18:00Z', '2026-12-05T19:00Z')).rejects.toThrow('visit_one_open')
})
