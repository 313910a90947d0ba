import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { commandTools, runCommand } from '@almanac/database/run-command'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { QUEUES, type QueueName } from '@almanac/runtime/queues'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { HANDLERS } from '../../apps/worker/handlers.ts'
import { NOW } from '../support/records.ts'
import { type FirmRecords, fingerprint, inspector, makeFirmRecords } from '../support/two-firms.ts'

let db: pg.Client
let firm: FirmRecords

const tasks = async () =>
  (
    await db.query<{ name: string; data: object }>(`select name, data from queue.job where data->>'companyId' = $1 order by name`, [
      firm.companyId,
    ])
  ).rows
/** What the worker does with a task. */
async function handle(queue: QueueName, payload: object): Promise<void> {
  await (HANDLERS as Record<QueueName, (payload: object) => Promise<void>>)[queue](payload)
}

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(NOW))
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

describe('a task', () => {
  const send = (fails: boolean) =>
    runCommand(firm, 'test.send', { commandId: newId() }, async (_tx, command) => {
      await command.enqueue('forecast-beds', { bedIds: [firm.bedId], cause: 'edit' })
      if (fails) throw new Error('planned')
      return {}
    })

  test('asked for in a transaction that is rolled back never was', async () => {
    await expect(send(true)).rejects.toThrow('planned')
    expect(await tasks()).toEqual([])
    await send(false)
    expect(await tasks()).toEqual([{ name: 'forecast-beds', data: { companyId: firm.companyId, bedIds: [firm.bedId], cause: 'edit' } }])
  })

  test('carries the company of its transaction, whatever the caller says', async () => {
    const other = newId()
    await inCompany(firm, (tx) => commandTools(tx, firm, 'test.send', null).enqueue('raise-reminders', { companyId: other } as never))
    expect(await tasks()).toEqual([{ name: 'raise-reminders', data: { companyId: firm.companyId } }])
  })
})

/** How each task ends whose company is no more: those that begin with the company's own facts fail, with a sentence or with Prisma's P2025 for a record that is not there; the others find no rows. */
const WITHOUT_COMPANY: Record<Exclude<QueueName, 'nightly' | 'read-bounces'>, string> = {
  'forecast-beds': 'fails: unexpected',
  'forecast-company': 'fails: P2025',
  'refit-company': 'fails: P2025',
  'backtest-company': 'fails: P2025',
  'plan-rebeds': 'finds nothing to do',
  'forecast-months': 'finds nothing to do',
  'raise-reminders': 'fails: unexpected',
  'send-messages': 'fails: P2025',
  'read-file': 'finds nothing to do',
  'apply-import': 'fails: not-found',
  'export-company': 'finds nothing to do',
  'remove-pictures': 'finds nothing to do',
  'lapse-offers': 'finds nothing to do',
  'work-out-plan': 'finds nothing to do',
}

describe.each(
  QUEUES.map((queue) => queue.name).filter(
    (name): name is Exclude<QueueName, 'nightly' | 'read-bounces'> => name !== 'nightly' && name !== 'read-bounces',
  ),
)('%s', (queue) => {
  const payload = (companyId: unknown) => ({
    companyId,
    bedIds: [firm.bedId],
    batchId: firm.batchId,
    planId: firm.planId,
    exportId: firm.exportId,
    cause: 'nightly',
  })
  const state = () => fingerprint(db, ['bed_forecast', 'forecast_run', 'forecast_month', 'reminder', 'audit_entry'], [firm.companyId])

  test.each([undefined, null, '', 'everyone', "' or true"])('with %j for its company fails and changes nothing', async (company) => {
    const before = await state()
    await expect(handle(queue, payload(company))).rejects.toMatchObject({ code: 'unexpected' })
    expect(await state()).toEqual(before)
  })

  test('for a company that is no more ends as it must and changes nothing', async () => {
    const before = await state()
    const end = await handle(queue, payload(newId())).then(
      () => 'finds nothing to do',
      (error: { code?: string }) => `fails: ${error.code}`,
    )
    expect(end).toBe(WITHOUT_COMPANY[queue])
    expect(await state()).toEqual(before)
  })
})

describe('a task that is done twice, as after a crash between its effect and its end, has its effect once', () => {
  const rows = async (sql: string) => (await db.query(sql, [firm.companyId])).rows
  const forecasts = () =>
    rows('select bed_id, due10_day, due50_day, due90_day, chance_12_months from bed_forecast where company_id = $1 order by bed_id')
  const twice = async (queue: QueueName, payload: object, effect: () => Promise<unknown[]>) => {
    await handle(queue, payload)
    const once = await effect()
    expect(once.length).toBeGreaterThan(0)
    await handle(queue, payload)
    expect(await effect()).toEqual(once)
  }

  test('forecasts of some beds', () =>
    twice('forecast-beds', { companyId: firm.companyId, bedIds: [firm.bedId, firm.rebedBedId], cause: 'edit' }, forecasts))

  test('forecasts of a company, and each move written down once', async () => {
    await twice('forecast-company', { companyId: firm.companyId, cause: 'nightly' }, forecasts)
    // The fixture has one change of its own; the first run moved the forecast that stood there, the second moved nothing.
    expect(await rows('select bed_id from forecast_change where company_id = $1')).toHaveLength(2)
  })

  test('the month picture', async () => {
    await handle('forecast-company', { companyId: firm.companyId, cause: 'nightly' })
    const months = () =>
      rows('select month, months, mean, low, high, beds from forecast_month where company_id = $1 order by month, months')
    await twice('forecast-months', { companyId: firm.companyId }, months)
  })

  test('reminders', async () => {
    await db.query('delete from reminder_answer where company_id = $1', [firm.companyId])
    await db.query('delete from reminder where company_id = $1', [firm.companyId])
    const reminders = () => rows('select id, bed_id, state, version from reminder where company_id = $1')
    await twice('raise-reminders', { companyId: firm.companyId }, reminders)
    expect(await reminders()).toHaveLength(1)
  })

  test('two at the same moment', async () => {
    await db.query('delete from reminder_answer where company_id = $1', [firm.companyId])
    await db.query('delete from reminder where company_id = $1', [firm.companyId])
    await Promise.all([1, 2, 3].map(() => handle('raise-reminders', { companyId: firm.companyId })))
    expect(await rows('select id from reminder where company_id = $1')).toHaveLength(1)
  })
})
