import { spawn } from 'node:child_process'
import { once } from 'node:events'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { postText } from '@almanac/messages/send-text'
import { setClock } from '@almanac/runtime/clock'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { log } from '@almanac/runtime/log'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { addManyCustomers } from '../../../tests/support/many-customers.ts'
import { NOW } from '../../../tests/support/records.ts'
import { textServer } from '../../../tests/support/text-server.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { setConsent } from '../customers/set-consent.ts'
import { decideReminders } from './decide-reminders.ts'
import { deliverMessages, type Ways } from './deliver-messages.ts'
import { previewReminder } from './preview-reminder.ts'
import { raiseReminders } from './raise-reminders.ts'

let db: pg.Client
let firm: FirmRecords
let server: Awaited<ReturnType<typeof textServer>>

const PHONE = '(630) 555-0142'
const later = (minutes: number) => setClock(() => new Date(Date.parse(NOW) + minutes * 60_000))
const ways: Ways = {
  text: ({ address: to, body: text, companyName: from, companyLocale: locale, id }) => postText({ id, to, locale, from, text }, log()),
}
/** Texts for real, and mails that are only counted. */
function withMails() {
  const mailed: string[] = []
  const email: Ways['email'] = async ({ address }) => {
    mailed.push(address)
    return { outcome: 'taken' }
  }
  return { mailed, both: { ...ways, email } }
}
const deliver = (by = ways) => deliverMessages(firm, by)
const messages = () => inCompany(firm, (tx) => tx.message.findMany({ where: { reminderId: { not: null } }, orderBy: { createdAt: 'asc' } }))
const waiting = () => inCompany(firm, (tx) => tx.reminder.findMany({ where: { state: 'waiting' }, select: { id: true, version: true } }))
async function approve() {
  await raiseReminders(firm)
  return decideReminders(firm, { commandId: newId(), decision: 'release', reminders: await waiting() })
}

async function serve(options: Parameters<typeof textServer>[0] = {}) {
  server = await textServer(options)
  for (const [name, value] of [
    ['TEXT_URL', server.url],
    ['TEXT_TOKEN', 'let-me-in'],
    ['LOG_LEVEL', 'silent'],
  ] as const)
    vi.stubEnv(name, value)
  forgetConfig()
}

beforeAll(async () => {
  db = await inspector()
})
beforeEach(async () => {
  later(0)
  firm = await makeFirmRecords(db)
  for (const table of ['message', 'reminder_answer', 'reminder'])
    await db.query(`delete from ${table} where company_id = $1`, [firm.companyId])
  // Texts, and nothing else, is what they agreed to.
  await db.query(`update consent set channel = 'text' where company_id = $1 and contact_id = $2`, [firm.companyId, firm.contactId])
  await db.query(`update contact set phone = $2, language = 'en' where company_id = $1 and id = $3`, [
    firm.companyId,
    PHONE,
    firm.contactId,
  ])
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

test('who agreed to texts alone gets one, short, in plain marks, and no mail', async () => {
  await serve()
  await approve()
  const { mailed, both } = withMails()
  await deliver(both)
  await deliver()
  expect(mailed).toEqual([])
  expect(server.taken).toMatchObject([{ to: '+16305550142', from: 'Quarry Road Soft Water' }])
  expect(server.taken[0]?.text).toContain('will likely need replacing before December 2026')
  expect(server.taken[0]?.text).not.toMatch(/[’“”–]/)
  expect(await messages()).toMatchObject([{ state: 'sent', channel: 'text', tries: 1 }])
})

test.each([
  ['en', 2, null], // with a link of 94 letters more than 160, and no letter that the short alphabet lacks
  ['es', 4, 'á'],
])('a preview in %s says that it goes out as %i', async (language, parts, wide) => {
  await serve()
  await db.query('update contact set language = $2 where company_id = $1', [firm.companyId, language])
  await raiseReminders(firm)
  const [one] = await waiting()
  const preview = await previewReminder(firm, one?.id ?? '', `https://almanac.firm.example/${'x'.repeat(65)}`)
  expect(preview.text).toMatchObject({ parts, wide })
})

test('who withdraws that consent after it was approved gets none', async () => {
  await serve()
  await approve()
  const { version } = await inCompany(firm, (tx) => tx.consent.findFirstOrThrow({ where: { contactId: firm.contactId } }))
  const no = { contactId: firm.contactId, channel: 'text', granted: false, source: 'call', sinceDay: '2026-12-01', version } as const
  await setConsent(firm, { commandId: newId(), ...no })
  await deliver()
  expect(server.taken).toEqual([])
  expect(await messages()).toMatchObject([{ state: 'withdrawn' }])
})

describe('never twice', () => {
  test('by two workers at once', async () => {
    await serve()
    await addManyCustomers(firm, 12)
    await db.query(`update contact set phone = '630 555 0' || (100 + floor(random() * 800))::int where company_id = $1 and phone is null`, [
      firm.companyId,
    ])
    await db.query(`update consent set channel = 'text' where company_id = $1`, [firm.companyId])
    await approve()
    await Promise.all([deliver(), deliver()])
    const ids = server.taken.map((one) => one.id)
    expect([ids.length, new Set(ids).size]).toEqual([13, 13])
  })

  test('when the worker is killed between the server’s answer and the commit', async () => {
    await serve()
    await approve()
    const script = path.resolve(import.meta.dirname, '../../../tests/support/asides/text-and-die.ts')
    const worker = spawn(process.execPath, [script, firm.companyId, NOW], { env: { ...process.env, NODE_OPTIONS: '' }, stdio: 'inherit' })
    expect(await once(worker, 'exit')).toEqual([null, 'SIGKILL'])
    for (const minutes of [1, 6, 60, 60 * 24]) {
      later(minutes)
      await deliver()
    }
    expect(server.taken).toHaveLength(1)
    expect(await messages()).toMatchObject([{ state: 'uncertain' }])
  })

  test.each(['hang-up', 500] as const)('when its answer is %s: nobody knows, and a person looks', async (answer) => {
    await serve({ answer: () => answer })
    await approve()
    await deliver()
    later(60 * 24)
    await deliver()
    expect(await messages()).toMatchObject([{ state: 'uncertain', tries: 1 }])
    expect(server.heads).toHaveLength(1)
  })
})

test('a text server that is closed for now is asked again later, and mails go on meanwhile', async () => {
  let open = false
  await serve({ answer: () => (open ? 202 : 503) })
  await addManyCustomers(firm, 3)
  await approve()
  const { mailed, both } = withMails()
  await deliver(both)
  expect(mailed).toHaveLength(3)
  expect((await messages()).find((one) => one.channel === 'text')).toMatchObject({
    state: 'approved',
    stateReason: 'The text server answered 503.',
  })
  open = true
  later(1)
  await deliver(both)
  expect(server.taken).toHaveLength(1)
  expect(mailed).toHaveLength(3)
})

test('a number that the other side refuses is for a person to look at', async () => {
  await serve({ answer: () => 422 })
  await approve()
  await deliver()
  expect(await messages()).toMatchObject([{ state: 'refused', stateReason: 'The text server answered 422.' }])
})
