import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { makePublicToken } from '@almanac/identity/public-token'
import { changeContact } from '@almanac/operations/customers/change-contact'
import { decideReminders } from '@almanac/operations/reminders/decide-reminders'
import { raiseReminders } from '@almanac/operations/reminders/raise-reminders'
import { setClock } from '@almanac/runtime/clock'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { HANDLERS } from '../../apps/worker/handlers.ts'
import { mailServer } from '../support/mail-server.ts'
import { mailbox } from '../support/mailbox.ts'
import { NOW } from '../support/records.ts'
import { reportOfDelivery } from '../support/report-of-delivery.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../support/two-firms.ts'

let db: pg.Client
let firm: FirmRecords
let smtp: Awaited<ReturnType<typeof mailServer>>
let imap: Awaited<ReturnType<typeof mailbox>> | undefined

const HANNA = 'hanna@orchard.example'
const message = () => inCompany(firm, (tx) => tx.message.findFirstOrThrow({ where: { reminderId: { not: null } } }))
const contact = () =>
  inCompany(firm, (tx) => tx.contact.findUniqueOrThrow({ where: { companyId_id: { companyId: firm.companyId, id: firm.contactId } } }))
const calls = () => inCompany(firm, (tx) => tx.callBack.findMany({ where: { note: { contains: 'came back' } } }))
/** The Message-ID of the one mail that went out, without its host. */
const sentId = () => /^Message-ID:\s*<([^@>]+)@/im.exec(smtp.taken[0]?.text ?? '')?.[1] ?? ''

/** Puts mails into the mailbox and lets the worker look at it, as it does every few minutes. */
async function readMails(...mails: string[]) {
  imap = await mailbox(mails)
  vi.stubEnv('BOUNCE_IMAP_URL', imap.url)
  forgetConfig()
  await HANDLERS['read-bounces']({})
}

beforeAll(async () => {
  db = await inspector()
})
beforeEach(async () => {
  setClock(() => new Date(NOW))
  firm = await makeFirmRecords(db)
  for (const table of ['message', 'reminder_answer', 'reminder'])
    await db.query(`delete from ${table} where company_id = $1`, [firm.companyId])
  smtp = await mailServer()
  for (const [name, value] of [
    ['SMTP_URL', smtp.url],
    ['MAIL_FROM', 'almanac@firm.example'],
    ['LOG_LEVEL', 'silent'],
  ] as const)
    vi.stubEnv(name, value)
  forgetConfig()
  await raiseReminders(firm)
  const waiting = await inCompany(firm, (tx) => tx.reminder.findMany({ select: { id: true, version: true } }))
  await decideReminders(firm, { commandId: newId(), decision: 'release', reminders: waiting })
  await HANDLERS['send-messages']({ companyId: firm.companyId })
})
afterEach(async () => {
  await smtp.close()
  await imap?.close()
  imap = undefined
  vi.unstubAllEnvs()
  forgetConfig()
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a mail that came back', () => {
  test('says so with its reason, marks the address, puts its reader on the list to call, and is read once', async () => {
    expect(await message()).toMatchObject({ state: 'sent' })
    await readMails('Subject: A question\r\n\r\nWhen do you come?', reportOfDelivery({ messageId: sentId(), to: HANNA }))
    expect(await message()).toMatchObject({ state: 'bounced', stateReason: 'The address doesn’t take mail (5.1.1).' })
    expect(await contact()).toMatchObject({ email: HANNA, deadEmail: HANNA })
    expect(await calls()).toMatchObject([{ state: 'open', siteId: firm.siteId, cause: 'asked' }])
    expect((await calls())[0]?.note).not.toContain(HANNA)
    // The question stays unread for whoever answers it; the report is read.
    expect(await imap?.seen()).toEqual([false, true])
    await HANDLERS['read-bounces']({})
    expect(await calls()).toHaveLength(1)
  })

  test('takes no mail any more, until its address is corrected', async () => {
    await readMails(reportOfDelivery({ messageId: sentId(), to: HANNA }))
    await db.query('delete from message where company_id = $1', [firm.companyId])
    await db.query('delete from reminder where company_id = $1', [firm.companyId])
    await raiseReminders(firm)
    const due = () => inCompany(firm, (tx) => tx.reminder.findMany())
    expect((await due()).filter((one) => one.channel === 'email')).toEqual([])
    const { role, name, phone, language, version } = await contact()
    const same = { role: role as 'payer', name: name ?? '', phone: phone ?? '', language: language as null }
    await changeContact(firm, { commandId: newId(), contactId: firm.contactId, version, ...same, email: 'hanna@vale.example' })
    await raiseReminders(firm)
    expect((await due()).filter((one) => one.channel === 'email')).toHaveLength(1)
  })

  test('because the mailbox is full says nothing of the address', async () => {
    await readMails(reportOfDelivery({ messageId: sentId(), to: HANNA, status: '5.2.2' }))
    expect(await message()).toMatchObject({ state: 'bounced', stateReason: 'The mailbox is full (5.2.2).' })
    expect(await contact()).toMatchObject({ deadEmail: null })
    expect(await calls()).toHaveLength(1)
  })
})

test('a report that somebody made up changes nothing: for a message by its bare id, by another purpose’s token, or of a delay', async () => {
  const { id } = await message()
  const of = { companyId: firm.companyId, id }
  await readMails(
    reportOfDelivery({ messageId: id, to: HANNA }),
    reportOfDelivery({ messageId: makePublicToken('reminder', of), to: HANNA }),
    reportOfDelivery({ messageId: makePublicToken('message', { ...of, id: newId() }), to: HANNA }),
    reportOfDelivery({ messageId: sentId(), to: HANNA, action: 'delayed' }),
  )
  expect(await message()).toMatchObject({ state: 'sent' })
  expect(await calls()).toEqual([])
  expect(await imap?.seen()).toEqual([false, false, false, false])
})

test('a mailbox that is away, or whose password is wrong, is left for the next look', async () => {
  await readMails()
  await imap?.close()
  await expect(HANDLERS['read-bounces']({})).resolves.toBeUndefined()
  imap = await mailbox([])
  vi.stubEnv('BOUNCE_IMAP_URL', imap.url.replace(':testpass@', ':wrong@'))
  forgetConfig()
  await expect(HANDLERS['read-bounces']({})).resolves.toBeUndefined()
  expect(await message()).toMatchObject({ state: 'sent' })
})
