import { closeClients } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readMergings } from '@almanac/database/read/mergings'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { ticked } from '../../../tests/support/close-out.ts'
import { DAY } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { archiveSite, restoreSite } from '../archive/archive-site.ts'
import { archiveSoftener, restoreSoftener } from '../archive/archive-softener.ts'
import { closeOutVisit } from '../jobs/close-out-visit.ts'
import { handOver } from '../jobs/hand-over.ts'
import { eraseCustomer } from '../keeping/erase-customer.ts'
import { mergeSites } from '../merging/merge-records.ts'
import { undoMerging } from '../merging/undo-merging.ts'
import { agreementsOfSite } from './of-site.ts'

let db: pg.Client
let firm: FirmRecords
const command = () => ({ commandId: newId() })
const cards = (siteId = firm.siteId) => agreementsOfSite(firm, siteId)
const times = { startedAt: `${DAY}T16:00:00.000Z`, finishedAt: `${DAY}T16:40:00.000Z` }
const sql = async (text: string, ...more: string[]) => (await db.query(text, [firm.companyId, ...more])).rows
const stored = () =>
  inCompany(firm, (tx) => tx.agreement.findUniqueOrThrow({ where: { companyId_id: { companyId: firm.companyId, id: firm.agreementId } } }))

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(`${DAY}T20:00:00Z`))
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

test('a visit that is done does its turn, with what it measured; the bed was seen working, and is forecast again', async () => {
  await sql(`update agreement_turn set job_id = $2 where company_id = $1`, firm.bookedJobId)
  await sql(`update job set softener_id = $2 where company_id = $1 and id = $3`, firm.softenerId, firm.bookedJobId)
  const reading = { kind: 'outletHardnessGpg' as const, value: 0.5, enteredValue: 0.5, enteredUnit: 'gpg' }
  await closeOutVisit(firm, {
    ...command(),
    record: {
      ...{ visitId: firm.visitId, jobKind: 'annual-visit', outcome: 'done', workDay: DAY, ...times },
      checks: [...ticked('leaks-checked', 'bypass-returned'), { stepId: 'salt', confirmed: true, note: 'low' }],
      ...{ measurements: [reading], partsUsed: [], oldBed: null, newBed: null, reason: '', hardnessReason: '', notes: '' },
    },
  })
  const [card] = await cards()
  expect(card?.turns.find((one) => one.dueDay === '2025-12-15')).toMatchObject({
    ...{ standing: 'done', doneDay: DAY, late: false, outletHardnessGpg: 0.5, salt: 'low', job: { id: firm.bookedJobId, state: 'closed' } },
  })
  const bed = await inCompany(firm, (tx) => tx.bed.findUnique({ where: { companyId_id: { companyId: firm.companyId, id: firm.bedId } } }))
  expect(dayOf(bed?.lastSeenDay ?? null)).toBe(DAY)
  expect(await sql(`select 1 from queue.job where name = 'forecast-beds' and data->>'companyId' = $1::text`)).not.toEqual([])
})

test('salt that the customer collects does its turn as well', async () => {
  await sql(`update agreement_turn set job_id = $2 where company_id = $1`, firm.deliveryJobId)
  await handOver(firm, { ...command(), jobId: firm.deliveryJobId, jobVersion: 1, way: 'collected' })
  const [card] = await cards()
  expect(card?.turns.find((one) => one.dueDay === '2025-12-15')).toMatchObject({ standing: 'done', doneDay: DAY })
})

test('a visit without access leaves its turn to be done', async () => {
  await sql(`update agreement_turn set job_id = $2 where company_id = $1`, firm.rebedJobId)
  await closeOutVisit(firm, {
    ...command(),
    record: {
      ...{ visitId: firm.rebedVisitId, jobKind: 'rebed', outcome: 'no-access', workDay: DAY, ...times },
      ...{
        checks: [],
        measurements: [],
        partsUsed: [],
        oldBed: null,
        newBed: null,
        reason: 'nobody at home',
        hardnessReason: '',
        notes: '',
      },
    },
  })
  const [card] = await cards()
  expect(card?.turns.find((one) => one.dueDay === '2025-12-15')).toMatchObject({ standing: 'under-way', late: true })
})

test('archived with its softener or its site it leaves the rounds, and comes back with it', async () => {
  await sql(`update job set state = 'called-off', state_reason = 'x' where company_id = $1`)
  await archiveSoftener(firm, { ...command(), softenerId: firm.softenerId, version: 1, reason: 'unit-removed' })
  expect(await cards()).toEqual([])
  await restoreSoftener(firm, { ...command(), softenerId: firm.softenerId, version: 2 })
  expect(await cards()).toHaveLength(1)
  await archiveSite(firm, { ...command(), siteId: firm.siteId, version: 1, reason: 'twice' })
  expect((await stored()).archivedAt).not.toBeNull()
  await restoreSite(firm, { ...command(), siteId: firm.siteId, version: 2 })
  expect(await cards()).toHaveLength(1)
})

test('goes with what is merged, and back when that is undone', async () => {
  const twin = newId()
  await sql(`insert into site (company_id, id, label) values ($1, $2, 'Orchard Lane 14a')`, twin)
  await mergeSites(firm, { ...command(), keptId: twin, goneId: firm.siteId })
  expect(await cards(twin)).toHaveLength(1)
  const [merging] = (await readMergings(firm, { limit: 9 })).rows
  await undoMerging(firm, { ...command(), mergingId: merging?.id ?? '', version: merging?.version ?? 0 })
  expect([await cards(twin), (await cards()).length]).toEqual([[], 1])
})

test('an erased customer is in no notes of it, nor in why a turn was skipped; and nobody goes there by it any more', async () => {
  await sql(`update agreement set notes = 'Hanna Vale pays in spring' where company_id = $1`)
  await sql(`update agreement_turn set state = 'skipped', job_id = null, reason = 'Hanna Vale was away' where company_id = $1`)
  await eraseCustomer(firm, { ...command(), customerId: firm.customerId, version: 1 })
  const [card] = await cards()
  expect(card).toMatchObject({ endedDay: DAY, endWhy: 'erased', notes: expect.not.stringMatching(/Hanna/) })
  expect(card?.turns.find((one) => one.dueDay === '2025-12-15')?.reason).not.toMatch(/Hanna/)
})
