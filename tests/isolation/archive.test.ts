import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readArchived } from '@almanac/database/read/archived-list'
import { readBedHistoryPage } from '@almanac/database/read/bed-records'
import { readSitePage } from '@almanac/database/read/site-page'
import { readSites } from '@almanac/database/read/sites-list'
import { archiveCustomer, restoreCustomer } from '@almanac/operations/archive/archive-customer'
import { archiveSite, restoreSite } from '@almanac/operations/archive/archive-site'
import { archiveSoftener, restoreSoftener } from '@almanac/operations/archive/archive-softener'
import { refreshBeds } from '@almanac/operations/forecasts/refresh-forecasts'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { queryTerms } from '@almanac/service-rules/search/search-tokens'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { NOW } from '../support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

let db: pg.Client
let mine: FirmRecords

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(NOW))
})
beforeEach(async () => {
  mine = await makeFirmRecords(db)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

const command = () => ({ commandId: newId() })
const one = async (sql: string) => (await db.query(sql, [mine.companyId])).rows
/** No job is open: as where archiving is allowed. */
const closeJobs = () => one(`update job set state = 'called-off', state_reason = 'x' where company_id = $1`)
const versionOf = async (table: string, id: string) =>
  Number((await db.query(`select version from ${table} where company_id = $1 and id = $2`, [mine.companyId, id])).rows[0]?.version)
/** Works off what was asked of the worker for the beds of the firm. */
async function forecastAsked() {
  const tasks = await one(`select data from queue.job where name = 'forecast-beds' and data->>'companyId' = $1::text and state = 'created'`)
  for (const { data } of tasks) await refreshBeds(data)
}
const forecastBeds = async () => (await one('select bed_id from bed_forecast where company_id = $1')).map((row) => row.bed_id).sort()
const inLists = async (q: string) => (await readSites(mine, { terms: queryTerms(q), limit: 50 })).rows.map((row) => row.label)

test('a softener leaves its site’s page and the forecasts, and comes back with its bed; the reason is kept', async () => {
  await closeJobs()
  const before = await readSitePage(mine, mine.siteId)
  await archiveSoftener(mine, { ...command(), softenerId: mine.softenerId, version: 1, reason: 'unit-removed' })
  await forecastAsked()
  expect((await readSitePage(mine, mine.siteId)).softeners.map((each) => each.id)).not.toContain(mine.softenerId)
  expect(await forecastBeds()).not.toContain(mine.bedId)
  const { rows } = await readArchived(mine, { limit: 50 })
  expect(rows).toMatchObject([{ kind: 'softener', id: mine.softenerId, reason: 'unit-removed' }])
  await restoreSoftener(mine, { ...command(), softenerId: mine.softenerId, version: rows[0]?.version ?? 0 })
  await forecastAsked()
  expect((await readSitePage(mine, mine.siteId)).softeners.map((each) => [each.id, each.tanks.length])).toEqual(
    before.softeners.map((each) => [each.id, each.tanks.length]),
  )
  expect(await forecastBeds()).toContain(mine.bedId)
  expect((await readArchived(mine, { limit: 50 })).rows).toEqual([])
  const trail = await one(`select operation, detail from audit_entry where company_id = $1 and entity = 'softener' order by id`)
  expect(trail).toMatchObject([{ detail: { reason: 'unit-removed' } }, { operation: 'archive.restore-softener: brought back' }])
})

test('beds that ended before stay what forecasts learn from, but of a site that was entered twice', async () => {
  await closeJobs()
  await one(`insert into bed (company_id, id, tank_id, began_earliest, began_latest, ended_earliest, ended_latest, end_cause)
    select company_id, gen_random_uuid(), tank_id, '2001-01-01', '2001-01-01', '2011-01-01', '2011-01-01', 'worn' from bed where company_id = $1 limit 1`)
  const learnedFrom = async () => {
    const { beds } = await inCompany(mine, (tx) => readBedHistoryPage(tx, mine.companyId, null, 100))
    return beds.map((bed) => bed.endedLatest)
  }
  expect(await learnedFrom()).toContain('2011-01-01')
  await archiveSite(mine, { ...command(), siteId: mine.siteId, version: 1, reason: 'closed' })
  expect(await learnedFrom()).toEqual(['2011-01-01'])
  await restoreSite(mine, { ...command(), siteId: mine.siteId, version: 2 })
  await archiveSite(mine, { ...command(), siteId: mine.siteId, version: 3, reason: 'twice' })
  expect(await learnedFrom()).toEqual([])
})

test('a site is found no more, and found again when it is back; a softener archived before it stays archived', async () => {
  await closeJobs()
  await archiveSoftener(mine, { ...command(), softenerId: mine.rebedSoftenerId, version: 1, reason: 'unit-removed' })
  setClock(() => new Date(Date.parse(NOW) + 60_000))
  await archiveSite(mine, { ...command(), siteId: mine.siteId, version: 1, reason: 'left' })
  setClock(() => new Date(NOW))
  expect(await inLists('orchard')).toEqual([])
  await expect(readSitePage(mine, mine.siteId)).rejects.toMatchObject({ code: 'not-found' })
  // Its softener cannot come back alone.
  const version = await versionOf('softener', mine.rebedSoftenerId)
  await expect(restoreSoftener(mine, { ...command(), softenerId: mine.rebedSoftenerId, version })).rejects.toMatchObject({
    code: 'conflict',
  })
  await restoreSite(mine, { ...command(), siteId: mine.siteId, version: 2 })
  const page = await readSitePage(mine, mine.siteId)
  expect(page.softeners.map((each) => each.id)).toEqual([mine.softenerId])
  expect(page.contacts).toHaveLength(1)
})

test('a customer goes with contacts and sites, and all of it comes back', async () => {
  await closeJobs()
  await archiveCustomer(mine, { ...command(), customerId: mine.customerId, version: 1, reason: 'left' })
  expect(await inLists('orchard')).toEqual([])
  expect(await one('select count(*)::int as n from contact where company_id = $1 and archived_at is null')).toEqual([{ n: 0 }])
  // What went with the customer is not listed by itself.
  expect((await readArchived(mine, { limit: 50 })).rows.map((row) => row.kind)).toEqual(['customer'])
  await restoreCustomer(mine, { ...command(), customerId: mine.customerId, version: 2 })
  const page = await readSitePage(mine, mine.siteId)
  expect([page.contacts.length, page.softeners.length, page.whom.customerName]).toEqual([1, 2, 'Hanna Vale'])
})

test('nothing is archived while a job is open there, and the page says so', async () => {
  for (const attempt of [
    () => archiveSoftener(mine, { ...command(), softenerId: mine.rebedSoftenerId, version: 1, reason: 'left' }),
    () => archiveSite(mine, { ...command(), siteId: mine.siteId, version: 1, reason: 'left' }),
    () => archiveCustomer(mine, { ...command(), customerId: mine.customerId, version: 1, reason: 'left' }),
  ])
    await expect(attempt()).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringMatching(/still open here\. Nothing was archived/),
    })
  expect((await readArchived(mine, { limit: 50 })).rows).toEqual([])
})
