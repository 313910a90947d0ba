import { spawn } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { postMail } from '@almanac/messages/send-mail'
import { type DeskEvent, messageStates } from '@almanac/records/message-state'
import { setClock } from '@almanac/runtime/clock'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { log } from '@almanac/runtime/log'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { messageEvents, nextMessageState } from '@almanac/service-rules/messages/message-states'
import type pg from 'pg'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { mailServer } from '../../../tests/support/mail-server.ts'
import { addManyCustomers } from '../../../tests/support/many-customers.ts'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { setConsent } from '../customers/set-consent.ts'
import { proposeJob } from '../jobs/propose-job.ts'
import { decideReminders } from './decide-reminders.ts'
import { deliverMessages, type Ways } from './deliver-messages.ts'
import { raiseReminders } from './raise-reminders.ts'
import { stepMessages } from './step-messages.ts'

let db: pg.Client
let firm: FirmRecords
let server: Awaited<ReturnType<typeof mailServer>>

const id = () => ({ commandId: newId() })
const standAt = (instant: string | number) => setClock(() => new Date(instant))
const later = (minutes: number) => standAt(Date.parse(NOW) + minutes * 60_000)
const ways: Ways = {
  email: ({ address: to, subject, body: text, companyName: fromName, id }) => postMail({ to, subject, text, fromName, id }, log()),
}
const deliver = () => deliverMessages(firm, ways)
const got = () => server.taken.map((mail) => mail.to[0])
const messages = () => inCompany(firm, (tx) => tx.message.findMany({ where: { reminderId: { not: null } }, orderBy: { createdAt: 'asc' } }))
const countsByState = async () =>
  Object.fromEntries(Object.entries(Object.groupBy(await messages(), (one) => one.state)).map(([k, v]) => [k, v?.length]))

/** Approves whatever waits. */
async function approveAll() {
  await raiseReminders(firm)
  const waiting = await inCompany(firm, (tx) =>
    tx.reminder.findMany({ where: { state: 'waiting' }, select: { id: true, version: true }, take: 200 }),
  )
  return decideReminders(firm, { ...id(), decision: 'release', reminders: waiting })
}

async function serve(options: Parameters<typeof mailServer>[0] = {}) {
  server = await mailServer(options)
  vi.stubEnv('SMTP_URL', server.url)
  vi.stubEnv('MAIL_FROM', 'almanac@firm.example')
  vi.stubEnv('LOG_LEVEL', 'silent')
  forgetConfig()
}

beforeAll(async () => {
  db = await inspector()
})
beforeEach(async () => {
  standAt(NOW)
  firm = await makeFirmRecords(db)
  await db.query('delete from message where company_id = $1', [firm.companyId])
  await db.query('delete from reminder_answer where company_id = $1', [firm.companyId])
  await db.query('delete from reminder where company_id = $1', [firm.companyId])
})
afterEach(async () => {
  await server?.close()
  vi.unstubAllEnvs()
  forgetConfig()
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('the database holds the table of states', () => {
  test('each step from a state to a state is taken or refused as the table says', async () => {
    await serve()
    await approveAll()
    const [message] = await messages()
    const allowed = new Set(
      messageStates.flatMap((from) =>
        messageEvents.flatMap((event) => {
          const step = nextMessageState(from, event)
          return step.ok ? [`${from} ${step.state}`] : []
        }),
      ),
    )
    const taken: string[] = []
    for (const from of messageStates)
      for (const to of messageStates) {
        if (from === to) continue
        await db.query('begin')
        await db.query('set local session_replication_role = replica') // puts it there whatever may follow what
        await db.query('update message set state = $2 where id = $1', [message?.id, from])
        await db.query('set local session_replication_role = origin')
        const done = await db.query('update message set state = $2 where id = $1', [message?.id, to]).then(
          () => true,
          (error: { constraint?: string }) => (error.constraint === 'message_step' ? false : Promise.reject(error)),
        )
        if (done) taken.push(`${from} ${to}`)
        await db.query('rollback')
      }
    expect(taken.sort()).toEqual([...allowed].sort())
  })

  test('what a message said stays, but for somebody who is erased', async () => {
    await serve()
    await approveAll()
    const change = (body: string) => db.query('update message set body = $2 where company_id = $1', [firm.companyId, body])
    await expect(change('Something else.')).rejects.toMatchObject({ constraint: 'message_keeps_words' })
    await expect(change('[erased]')).resolves.toMatchObject({ rowCount: 1 })
  })
})

describe('a morning', () => {
  test('of 201 reminders is approved and each arrives once; one is refused, one is asked for later and comes then', async () => {
    let full = true
    await serve({
      recipient: (address) =>
        address === 'customer-7@house.example' ? { code: 550 } : address === 'customer-8@house.example' && full ? { code: 450 } : undefined,
    })
    await addManyCustomers(firm, 200)
    for (const round of [1, 2]) {
      const { results } = await approveAll()
      expect([round, results.length, results.filter((one) => !one.done)]).toEqual([round, round === 1 ? 200 : 1, []])
    }
    await deliver()
    await deliver()
    expect(new Set(got()).size).toBe(got().length)
    expect(await countsByState()).toEqual({ sent: 199, refused: 1, approved: 1 })
    const refused = (await messages()).find((one) => one.state === 'refused')
    expect(refused).toMatchObject({ address: 'customer-7@house.example', stateReason: 'The mail server answered 550.', tries: 1 })
    full = false
    later(0.5)
    await deliver()
    expect(got()).toHaveLength(199)
    later(1)
    await deliver()
    expect(got()).toHaveLength(200)
    expect(await countsByState()).toEqual({ sent: 200, refused: 1 })
    const mail = server.taken.find(({ to }) => to[0] === 'customer-1@house.example')?.text
    expect(mail).toContain('From: Quarry Road Soft Water <almanac@firm.example>')
    expect(mail).toContain('Weir Road 1')
  })

  test('before eight waits until eight at the company’s clock', async () => {
    await serve()
    await approveAll()
    standAt('2026-12-02T14:59:00Z') // 7:59 in Phoenix
    await deliver()
    expect(got()).toEqual([])
    const { rows } = await db.query(`select start_after from queue.job where name = 'send-messages' and start_after > $1`, [
      '2026-12-02T14:59:30Z',
    ])
    expect(rows.map((row) => row.start_after.toISOString())).toContain('2026-12-02T15:00:00.000Z')
    standAt('2026-12-02T15:00:00Z')
    await deliver()
    expect(got()).toEqual(['hanna@orchard.example'])
  })

  test('without a mail server stays in the outbox', async () => {
    await serve()
    await approveAll()
    await deliverMessages(firm, {})
    expect(await countsByState()).toEqual({ approved: 1 })
  })

  test('whose mail server is away is asked again, less and less often, and is then said not to have gone', async () => {
    await serve()
    await approveAll()
    await server.close()
    for (let day = 0; day < 12; day++) {
      standAt(Date.parse(NOW) + day * 86_400_000)
      await deliver()
    }
    expect(await messages()).toMatchObject([{ state: 'refused', tries: 9, stateReason: 'The mail server didn’t answer.' }])
    expect(got()).toEqual([])
  })
})

describe('nobody hears what is no longer wanted', () => {
  test.each([
    ['A job for this bed is open.', () => proposeJob(firm, { ...id(), siteId: firm.siteId, bedId: firm.bedId, kind: 'rebed' })],
    [
      'The contact no longer agrees to be reached this way.',
      () =>
        setConsent(firm, {
          ...{ ...id(), contactId: firm.contactId, channel: 'email', granted: false, source: 'call', sinceDay: '2026-12-01', version: 1 },
        }),
    ],
    [
      'The bed is no longer in service.',
      () =>
        inCompany(firm, (tx) =>
          tx.bed.updateMany({
            where: { id: firm.bedId },
            data: { endedEarliest: dateOf('2026-12-01'), endedLatest: dateOf('2026-12-01'), endCause: 'worn' },
          }),
        ),
    ],
    ['The site was archived.', () => inCompany(firm, (tx) => tx.site.updateMany({ data: { archivedAt: new Date(NOW) } }))],
    ['The contact was archived.', () => inCompany(firm, (tx) => tx.contact.updateMany({ data: { archivedAt: new Date(NOW) } }))],
  ] as const)('once it was approved: %s', async (reason, happens) => {
    await serve()
    await approveAll()
    await happens()
    await deliver()
    expect(got()).toEqual([])
    expect(await messages()).toMatchObject([{ state: 'withdrawn', stateReason: reason }])
  })
})

describe('nothing is sent twice', () => {
  test('by two workers at once', async () => {
    await serve()
    await addManyCustomers(firm, 20)
    await approveAll()
    await Promise.all([deliver(), deliver()])
    expect(got()).toHaveLength(21)
    expect(new Set(got()).size).toBe(21)
    expect(await countsByState()).toEqual({ sent: 21 })
  })

  test('when the worker is killed between the server’s answer and the commit: nobody knows, and a person looks', async () => {
    await serve()
    await approveAll()
    const script = path.resolve(import.meta.dirname, '../../../tests/support/asides/send-and-die.ts')
    const worker = spawn(process.execPath, [script, firm.companyId, NOW], { env: { ...process.env, NODE_OPTIONS: '' }, stdio: 'inherit' })
    expect(await once(worker, 'exit')).toEqual([null, 'SIGKILL'])
    expect(got()).toEqual(['hanna@orchard.example'])
    expect(await countsByState()).toEqual({ sending: 1 })
    const since = (await messages())[0]?.sendingSince?.getTime() ?? 0
    for (const minutes of [1, 6, 60, 60 * 24]) {
      standAt(since + minutes * 60_000)
      await deliver()
    }
    expect(got()).toHaveLength(1)
    expect(await messages()).toMatchObject([{ state: 'uncertain', stateReason: 'Sending broke off before we heard whether it arrived.' }])
  })

  test('when the server hangs up with the mail in its hands', async () => {
    await serve({ contents: () => 'hang-up' })
    await approveAll()
    await deliver()
    later(60 * 24)
    await deliver()
    expect(await messages()).toMatchObject([{ state: 'uncertain', tries: 1 }])
  })

  test('by a window that moves every night for a year', async () => {
    await serve()
    for (let night = 0; night < 365; night += 14) {
      standAt(Date.parse(NOW) + night * 86_400_000)
      await inCompany(firm, (tx) =>
        tx.bedForecast.updateMany({
          where: { bedId: firm.bedId },
          data: { due10Day: dateOf(`2027-0${1 + (night % 9)}-0${1 + (night % 7)}`) },
        }),
      )
      await approveAll()
      await deliver()
    }
    expect(got()).toEqual(['hanna@orchard.example'])
  }, 60_000)

  test('when the clock is set back and on by an hour, as in the night of a clock change', async () => {
    await serve()
    await approveAll()
    for (const minutes of [0, -60, 0, 60, 0]) {
      later(minutes)
      await deliver()
    }
    expect(got()).toHaveLength(1)
  })
})

describe('a person', () => {
  const step = async (event: DeskEvent, more: { version?: number } = {}) => {
    const [one] = await messages()
    const asked = [{ id: one?.id ?? '', version: one?.version ?? 0, ...more }]
    return (await stepMessages(firm, { ...id(), messages: asked, event })).results[0]
  }

  test('sends again what nobody knew of, and it goes out once more and no further', async () => {
    let hangUp = true
    await serve({ contents: () => (hangUp ? 'hang-up' : undefined) })
    await approveAll()
    await deliver()
    expect(await step('hold')).toMatchObject({ done: false, reason: expect.stringContaining('Nobody knows') })
    hangUp = false
    expect(await step('send-again')).toMatchObject({ done: true })
    await deliver()
    await deliver()
    expect(got()).toHaveLength(1)
    expect(await messages()).toMatchObject([{ state: 'sent', tries: 1 }])
    expect(await step('bounce')).toMatchObject({ done: true })
    expect(await messages()).toMatchObject([{ state: 'bounced' }])
    expect(await inCompany(firm, (tx) => tx.contact.findFirst({ where: { id: firm.contactId } }))).toMatchObject({
      deadEmail: 'hanna@orchard.example',
    })
  })

  test('holds one, and it does not go out until it is taken off hold', async () => {
    await serve()
    await approveAll()
    expect(await step('hold', { version: 9 })).toMatchObject({ done: false, reason: expect.stringContaining('changed after') })
    expect(await step('hold')).toMatchObject({ done: true })
    await deliver()
    expect(got()).toEqual([])
    expect(await step('free')).toMatchObject({ done: true })
    await deliver()
    expect(got()).toHaveLength(1)
    expect(await step('withdraw')).toMatchObject({ done: false, reason: expect.stringContaining('was sent') })
  })

  test('marks as sent what went by post, and it does not go out', async () => {
    await serve()
    await approveAll()
    expect(await step('mark-sent')).toMatchObject({ done: true })
    await deliver()
    expect(got()).toEqual([])
  })
})
