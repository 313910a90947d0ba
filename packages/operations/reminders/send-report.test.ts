import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closeClients } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { fileStore } from '@almanac/files/file-store'
import { postMail } from '@almanac/messages/send-mail'
import { setClock } from '@almanac/runtime/clock'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { log } from '@almanac/runtime/log'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { simpleParser } from 'mailparser'
import type pg from 'pg'
import { extractText, getDocumentProxy } from 'unpdf'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest'
import { rebedRecord } from '../../../tests/support/close-out.ts'
import { englishLeft } from '../../../tests/support/english-left.ts'
import { mailServer } from '../../../tests/support/mail-server.ts'
import { DAY } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { setConsent } from '../customers/set-consent.ts'
import { closeOutVisit } from '../jobs/close-out-visit.ts'
import { eraseContact } from '../keeping/erase-contact.ts'
import { eraseCustomer } from '../keeping/erase-customer.ts'
import { removeErasedPictures } from '../pictures/remove-erased.ts'
import { deliverMessages, type Ways } from './deliver-messages.ts'
import { openMailedReport } from './open-mailed-report.ts'
import { readReportReaders } from './report-readers.ts'
import { sendReport } from './send-report.ts'
import { stepMessages } from './step-messages.ts'
import { takeBounce } from './take-bounce.ts'

let db: pg.Client
let firm: FirmRecords
let server: Awaited<ReturnType<typeof mailServer>>
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-reports-'))

const id = () => ({ commandId: newId() })
/** Noon in Phoenix: within the hours that a company sends in. */
const NOON = `${DAY}T20:00:00Z`
const ways: Ways = {
  email: ({ address: to, subject, body: text, companyName: fromName, id: named, attachment }) =>
    postMail({ to, subject, text, fromName, id: named, attachment }, log()),
}
const deliver = () => deliverMessages(firm, ways)
const send = (change: { visitId?: string; contactId?: string; commandId?: string } = {}) =>
  sendReport(firm, { ...id(), visitId: firm.rebedVisitId, contactId: firm.contactId, ...change })
const mailed = () => inCompany(firm, (tx) => tx.message.findMany({ where: { visitId: { not: null } }, orderBy: { createdAt: 'asc' } }))
const reader = async () => (await readReportReaders(firm, firm.rebedVisitId)).readers.find((one) => one.contactId === firm.contactId)
const change = (data: object) => inCompany(firm, (tx) => tx.contact.updateMany({ where: { id: firm.contactId }, data }))
const consent = async (granted: boolean) => {
  const { version } = await inCompany(firm, (tx) => tx.consent.findFirstOrThrow({ where: { contactId: firm.contactId, channel: 'email' } }))
  await setConsent(firm, { ...id(), contactId: firm.contactId, channel: 'email', granted, source: 'call', sinceDay: '2026-12-01', version })
}
/** The mails that arrived, as a mail program reads them. */
const arrived = () => Promise.all(server.taken.map(({ raw }) => simpleParser(raw)))
async function textOf(pdf: Uint8Array): Promise<string> {
  const { text } = await extractText(await getDocumentProxy(new Uint8Array(pdf)), { mergePages: true })
  return text.replace(/\s+/g, ' ')
}
function setUp(env: Record<string, string>) {
  for (const [name, value] of Object.entries({ MAIL_FROM: 'almanac@firm.example', LOG_LEVEL: 'silent', DATA_DIR: folder, ...env }))
    vi.stubEnv(name, value)
  forgetConfig()
}

beforeAll(async () => {
  db = await inspector()
})
beforeEach(async () => {
  setClock(() => new Date(NOON))
  server = await mailServer()
  setUp({ SMTP_URL: server.url })
  firm = await makeFirmRecords(db)
  await db.query('delete from message where company_id = $1', [firm.companyId])
  await closeOutVisit(firm, { ...id(), record: rebedRecord(firm) })
})
afterEach(async () => {
  await server.close()
  vi.unstubAllEnvs()
  forgetConfig()
})
afterAll(async () => {
  setClock()
  fs.rmSync(folder, { recursive: true })
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('the service report', () => {
  test('goes by mail as a PDF, once however often it is asked for, and stays as it went', async () => {
    const asked = id()
    const { messageId } = await send(asked)
    // The answer was lost on its way.
    expect(await send(asked)).toEqual({ messageId })
    await expect(send()).rejects.toMatchObject({ code: 'conflict', message: expect.stringContaining('Nothing is sent twice') })
    await Promise.all([deliver(), deliver()])
    await deliver()
    const [mail, ...others] = await arrived()
    expect(others).toEqual([])
    expect(mail).toMatchObject({ subject: 'Rebed at Orchard Lane 14: your service report', to: { text: 'hanna@orchard.example' } })
    expect(mail?.text).toContain('Dear Hanna Vale,')
    expect(mail?.text).toContain('The work is finished and your softener is in service.')
    const [file] = mail?.attachments ?? []
    expect(file).toMatchObject({ contentType: 'application/pdf', filename: `service-report-${DAY}.pdf` })
    const said = await textOf(file?.content ?? new Uint8Array())
    for (const text of ['Rebed, Orchard Lane 14', 'Hanna Vale', 'after our work 0.5 gpg']) expect(said).toContain(text)
    expect(await reader()).toMatchObject({ refusal: 'sent', last: { state: 'sent', address: 'hanna@orchard.example', kept: true } })

    await inCompany(firm, (tx) => tx.site.updateMany({ where: { id: firm.siteId }, data: { label: 'Another name' } }))
    const kept = await openMailedReport(firm, messageId)
    expect(Buffer.from(kept.bytes).equals(file?.content ?? Buffer.alloc(0))).toBe(true)
    await expect(db.query('update message set file_sha256 = $2 where id = $1', [messageId, 'a'.repeat(64)])).rejects.toMatchObject({
      constraint: 'message_keeps_words',
    })
  })

  test('asked for by two at once goes to one of them', async () => {
    const [one, two] = await Promise.allSettled([send(), send()])
    expect([one?.status, two?.status].sort()).toEqual(['fulfilled', 'rejected'])
    await deliver()
    expect(server.taken).toHaveLength(1)
  })

  test('speaks its reader’s language, in the mail and in the PDF', async () => {
    await change({ language: 'es' })
    await send()
    await deliver()
    const [mail] = await arrived()
    const named = [
      'Hanna Vale',
      'Orchard Lane 14',
      'Quarry Road Soft Water',
      'Larkmoor',
      'House softener',
      'Ruth Ames',
      'Resin 10%',
      'valve',
    ]
    expect(mail?.subject).toBe('Cambio de lecho en Orchard Lane 14: su informe de servicio')
    expect(englishLeft(mail?.text ?? '', named)).toEqual([])
    const [file] = mail?.attachments ?? []
    expect(file?.filename).toBe(`informe-de-servicio-${DAY}.pdf`)
    expect(englishLeft(await textOf(file?.content ?? new Uint8Array()), named)).toEqual([])
  })
})

describe('says why it can’t go', () => {
  const refused = async (why: string, words: RegExp) => {
    await expect(send()).rejects.toMatchObject({ code: 'conflict', message: expect.stringMatching(words) })
    if (why !== 'no-mail') expect(await reader()).toMatchObject({ refusal: why })
    await deliver()
    expect(server.taken).toEqual([])
    expect(await mailed()).toEqual([])
  }
  test('without a mail server', async () => {
    for (const name of ['SMTP_URL', 'MAIL_FROM']) vi.stubEnv(name, undefined)
    forgetConfig()
    await refused('no-mail', /^No mail server is set up/)
  })
  test('without an address', async () => {
    await change({ email: null })
    await refused('no-address', /^No email on record/)
  })
  test('to an address that mail came back from', async () => {
    await change({ deadEmail: 'hanna@orchard.example' })
    await refused('came-back', /^Mail to hanna@orchard\.example came back/)
  })
  test('to somebody who doesn’t agree', async () => {
    await consent(false)
    await refused('no-consent', /haven’t agreed to email/)
  })
  test('of a visit that isn’t closed, and to whoever holds the site since', async () => {
    await expect(send({ visitId: firm.visitId })).rejects.toMatchObject({
      code: 'conflict',
      message: expect.stringContaining('isn’t closed out yet'),
    })
    const [newcomer, tenure] = [newId(), newId()]
    await inCompany(firm, async (tx) => {
      const own = { companyId: firm.companyId, customerId: firm.otherCustomerId }
      await tx.tenure.updateMany({ where: { id: firm.tenureId }, data: { toDay: dateOf('2026-12-20') } })
      await tx.tenure.create({ data: { ...own, id: tenure, siteId: firm.siteId, fromDay: dateOf('2026-12-20') } })
      await tx.contact.create({ data: { ...own, id: newcomer, role: 'payer', email: 'otis@brand.example' } })
    })
    await expect(send({ contactId: newcomer })).rejects.toMatchObject({ code: 'not-found' })
    expect((await readReportReaders(firm, firm.rebedVisitId)).readers.map((one) => one.contactId)).toEqual([firm.contactId])
  })
})

describe('on its way', () => {
  test('consent that was withdrawn withdraws it; given again, it can be sent', async () => {
    await send()
    await consent(false)
    await deliver()
    expect(await mailed()).toMatchObject([{ state: 'withdrawn', stateReason: 'The contact no longer agrees to be reached this way.' }])
    expect(await reader()).toMatchObject({ refusal: 'no-consent' })
    await consent(true)
    await send()
    await deliver()
    expect(server.taken).toHaveLength(1)
  })

  test('without its file nothing goes, and a person reads why', async () => {
    const { messageId } = await send()
    await fileStore().remove({ companyId: firm.companyId, id: messageId })
    await deliver()
    expect(server.taken).toEqual([])
    expect(await mailed()).toMatchObject([{ state: 'refused', stateReason: 'The report’s file is missing from the store.' }])
    // Another one, with its file, is no second.
    await send()
    await deliver()
    expect(server.taken).toHaveLength(1)
  })

  test('a server that breaks off leaves it for a person, who sends it again with the same file', async () => {
    await server.close()
    let hangUp = true
    server = await mailServer({ contents: () => (hangUp ? 'hang-up' : undefined) })
    setUp({ SMTP_URL: server.url })
    await send()
    await deliver()
    const [message] = await mailed()
    expect(message).toMatchObject({ state: 'uncertain' })
    expect(await reader()).toMatchObject({ refusal: 'sent' })
    hangUp = false
    await stepMessages(firm, { ...id(), messages: [{ id: message?.id ?? '', version: message?.version ?? 0 }], event: 'send-again' })
    await deliver()
    const [mail] = await arrived()
    expect(mail?.attachments).toHaveLength(1)
    expect(server.taken).toHaveLength(1)
  })

  test('one that came back is told as a report, and a corrected address gets it', async () => {
    const { messageId } = await send()
    await deliver()
    await takeBounce({ companyId: firm.companyId, messageId }, '5.1.1')
    const { rows } = await db.query(`select note from call_back where company_id = $1 order by due_day desc`, [firm.companyId])
    expect(rows.map((row) => row.note)).toContainEqual(expect.stringMatching(/^A service report by email came back\./))
    expect(await reader()).toMatchObject({ refusal: 'came-back', last: { state: 'bounced' } })
    await change({ email: 'hanna.vale@orchard.example' })
    await send()
    await deliver()
    expect(server.taken.map((one) => one.to[0])).toEqual(['hanna@orchard.example', 'hanna.vale@orchard.example'])
  })
})

describe('erased', () => {
  const fileOf = (messageId: string) => fileStore().get({ companyId: firm.companyId, id: messageId })
  test.each([
    ['customer', () => eraseCustomer(firm, { ...id(), customerId: firm.customerId, version: 1 })],
    [
      'contact',
      async () => {
        await change({ name: 'Hanna at the door' })
        const { version } = await inCompany(firm, (tx) => tx.contact.findFirstOrThrow({ where: { id: firm.contactId } }))
        return eraseContact(firm, { ...id(), contactId: firm.contactId, version })
      },
    ],
  ] as const)('with the %s: no copy of the report stays', async (_, erase) => {
    const { messageId } = await send()
    await deliver()
    expect(await fileOf(messageId)).not.toBeNull()
    await erase()
    await removeErasedPictures(firm)
    expect(await fileOf(messageId)).toBeNull()
    expect(await mailed()).toMatchObject([{ address: '[erased]', body: '[erased]', fileState: 'gone' }])
    await expect(openMailedReport(firm, messageId)).rejects.toMatchObject({ code: 'not-found' })
  })
})

test('work that wasn’t finished is said so', async () => {
  await db.query(`update visit set outcome = 'made-safe' where company_id = $1 and id = $2`, [firm.companyId, firm.rebedVisitId])
  await send()
  await deliver()
  const [mail] = await arrived()
  expect(mail?.text).toContain('The work isn’t finished.')
})
