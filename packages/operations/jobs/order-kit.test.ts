import { closeClients } from '@almanac/database/client'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { orderKit } from './order-kit.ts'

let db: pg.Client
let firm: FirmRecords
const order = (way: 'collected' | 'shipped' = 'shipped') => orderKit(firm, { commandId: newId(), bedId: firm.bedId, way })

beforeAll(async () => {
  db = await inspector()
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

test('a kit for an owner is a delivery with what the stores keep of it set aside, once', async () => {
  await db.query(`insert into stock_item (company_id, id, name, kind, unit, on_hand) values ($1, $2, 'Tube cap', 'cap', 'piece', 3)`, [
    ...[firm.companyId, newId()],
  ])
  const { jobId, notKept } = await order()
  const job = (await db.query('select kind, bed_id, asked_for, notes from job where id = $1', [jobId])).rows[0]
  expect(job).toMatchObject({ kind: 'delivery', bed_id: firm.bedId, asked_for: { by: 'kit', way: 'shipped' } })
  expect(job.notes).toContain(notKept[0])
  const lines = (await db.query('select quantity, state, way from material_line where job_id = $1', [jobId])).rows
  // One cap goes into the tube while the bed is poured.
  expect(lines).toContainEqual({ quantity: 1, state: 'reserved', way: null })
  await expect(order('collected')).rejects.toThrow(/on a delivery already/)
})

test('without a go, nothing is set aside', async () => {
  await db.query(`update owner_decision set verdict = 'ask-first' where company_id = $1`, [firm.companyId])
  await expect(order()).rejects.toThrow(/Nobody has kept a go/)
})
