import { closeClients } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { changeHolder } from '../customers/change-holder.ts'
import { setConsent } from '../customers/set-consent.ts'
import { callOffJob } from '../jobs/call-off-job.ts'
import { proposeJob } from '../jobs/propose-job.ts'
import { decideReminders } from './decide-reminders.ts'
import { raiseReminders } from './raise-reminders.ts'

let db: pg.Client
let firm: FirmRecords

const id = () => ({ commandId: newId() })
const raise = () => raiseReminders({ companyId: firm.companyId })
const reminders = () => inCompany(firm, (tx) => tx.reminder.findMany({ where: { companyId: firm.companyId } }))
const messages = () => inCompany(firm, (tx) => tx.message.findMany({ where: { reminderId: { not: null } } }))
const moveWindow = (due10: string, due90: string) =>
  inCompany(firm, (tx) =>
    tx.bedForecast.updateMany({ where: { bedId: firm.bedId }, data: { due10Day: dateOf(due10), due90Day: dateOf(due90) } }),
  )
const decide = (decision: 'release' | 'hold' | 'unhold', more: Partial<{ id: string; version: number }> = {}) =>
  reminders().then(([one]) =>
    decideReminders(firm, { ...id(), decision, reminders: [{ id: one?.id ?? '', version: one?.version ?? 0, ...more }] }),
  )
const withdrawConsent = () =>
  setConsent(firm, {
    ...id(),
    contactId: firm.contactId,
    channel: 'email',
    granted: false,
    source: 'call',
    sinceDay: '2026-12-01',
    version: 1,
  })

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(NOW))
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
  // The fixture's bed is due from 2026-12-20, within the usual 60 days; its contact consents to e-mail.
  await db.query('delete from reminder_answer where company_id = $1', [firm.companyId])
  await db.query('delete from reminder where company_id = $1', [firm.companyId])
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a reminder', () => {
  test('is raised once for a bed and its notice, though the window moves every night', async () => {
    await raise()
    const [first] = await reminders()
    expect(first).toMatchObject({ bedId: firm.bedId, contactId: firm.contactId, channel: 'email', state: 'waiting', notice: 'due-window' })
    for (const night of ['2026-12-21', '2026-12-28', '2026-12-15']) {
      await moveWindow(night, '2030-02-01')
      await raise()
      expect((await reminders()).map((one) => [one.id, dayOf(one.dueEarliest)])).toEqual([[first?.id, night]])
    }
  })

  test.each([
    ['2027-01-31', 1], // 60 days after 2026-12-02
    ['2027-02-01', 0],
  ])('for a window from %s: %i today', async (due10, raised) => {
    await moveWindow(due10, '2030-01-01')
    await raise()
    expect(await reminders()).toHaveLength(raised)
  })

  test('keeps to the firm’s own lead time', async () => {
    await inCompany(firm, (tx) => tx.companySettings.updateMany({ data: { reminderLeadDays: 10 } }))
    await raise()
    expect(await reminders()).toEqual([])
    await inCompany(firm, (tx) => tx.companySettings.updateMany({ data: { reminderLeadDays: 18 } }))
    await raise()
    expect(await reminders()).toHaveLength(1)
  })

  test('is not raised without a consent', async () => {
    await withdrawConsent()
    await raise()
    expect(await reminders()).toEqual([])
  })

  test('is dropped while a rebed of the bed is open, and waits again once that is called off', async () => {
    await raise()
    const { jobId } = await proposeJob(firm, { ...id(), siteId: firm.siteId, bedId: firm.bedId, kind: 'rebed' })
    await raise()
    expect(await reminders()).toMatchObject([{ state: 'dropped', stateReason: 'a job for this bed is open' }])
    await callOffJob(firm, { ...id(), jobId, version: 1, reason: 'the house is empty this winter' })
    await raise()
    expect(await reminders()).toMatchObject([{ state: 'waiting', stateReason: null }])
  })

  test('is not raised at all where a rebed is open already', async () => {
    await proposeJob(firm, { ...id(), siteId: firm.siteId, bedId: firm.bedId, kind: 'rebed' })
    await raise()
    expect(await reminders()).toEqual([])
  })

  test('stops with the house that is sold, and is for whoever takes it, once they agree', async () => {
    await raise()
    const [before] = await reminders()
    await inCompany(firm, (tx) => tx.contact.updateMany({ where: { companyId: firm.companyId }, data: { siteId: null } }))
    const holder = { kind: 'new' as const, name: 'Jørgen Ashby', phone: '', email: 'jorgen@example.com', consents: [] }
    await changeHolder(firm, { ...id(), siteId: firm.siteId, tenureVersion: 1, fromDay: '2026-12-01', holder })
    await raise()
    expect(await reminders()).toMatchObject([
      { id: before?.id, state: 'dropped', stateReason: 'the contact no longer belongs to this site' },
    ])
    const { id: contactId } = await inCompany(firm, (tx) => tx.contact.findFirstOrThrow({ where: { email: holder.email } }))
    const yes = { channel: 'email' as const, granted: true, source: 'call' as const, sinceDay: '2026-12-01', version: null }
    await setConsent(firm, { ...id(), contactId, ...yes })
    await raise()
    expect(await reminders()).toMatchObject([{ id: before?.id, contactId, channel: 'email', state: 'waiting', stateReason: null }])
  })

  test('that went out before a house was sold goes to whoever holds it now too, once, when they agree', async () => {
    await raise()
    const [before] = await reminders()
    await decide('release')
    await inCompany(firm, (tx) => tx.contact.updateMany({ where: { companyId: firm.companyId }, data: { siteId: null } }))
    const yes = { channel: 'email' as const, granted: true, source: 'call' as const, sinceDay: '2026-12-01' }
    const sell = async (name: string, fromDay: string, tenureVersion: number) => {
      const holder = { kind: 'new' as const, name, phone: '', email: `${name.toLowerCase()}@example.com`, consents: [] }
      await changeHolder(firm, { ...id(), siteId: firm.siteId, tenureVersion, fromDay, holder })
      await raise()
      const contact = await inCompany(firm, (tx) => tx.contact.findFirstOrThrow({ where: { email: holder.email } }))
      return contact.id
    }
    const waiting = async () => (await reminders()).filter((one) => one.state === 'waiting')
    const ashby = await sell('Ashby', '2026-12-01', 1)
    expect(await waiting()).toEqual([])
    await setConsent(firm, { ...id(), contactId: ashby, ...yes, version: null })
    for (let night = 0; night < 3; night++) await raise()
    expect(await waiting()).toMatchObject([{ contactId: ashby, channel: 'email', bedId: firm.bedId }])
    expect((await reminders()).find((one) => one.id === before?.id)).toMatchObject({ state: 'released', contactId: firm.contactId })
    const [second] = await waiting()
    const release = { ...id(), decision: 'release' as const, reminders: [{ id: second?.id ?? '', version: second?.version ?? 0 }] }
    expect((await decideReminders(firm, release)).results).toMatchObject([{ done: true }])
    for (let night = 0; night < 3; night++) await raise()
    expect(await waiting()).toEqual([])
    expect((await messages()).map((one) => one.address)).toEqual(['hanna@orchard.example', 'ashby@example.com'])
  })

  test('goes with the bed that ends, and does not come back', async () => {
    await raise()
    const ended = { endedEarliest: dateOf('2026-12-01'), endedLatest: dateOf('2026-12-01'), endCause: 'worn' }
    await inCompany(firm, (tx) => tx.bed.updateMany({ where: { id: firm.bedId }, data: ended }))
    await raise()
    await raise()
    expect(await reminders()).toMatchObject([{ state: 'dropped', stateReason: 'the bed is no longer in service' }])
  })
})

describe('the owner', () => {
  test('releases it: a message with what is due, where and when stands in the outbox, once', async () => {
    await raise()
    const { results } = await decide('release')
    expect(results).toMatchObject([{ done: true, reason: null }])
    const [message] = await messages()
    expect(message).toMatchObject({ state: 'approved', channel: 'email', address: 'hanna@orchard.example' })
    expect(message?.subject).toContain('Orchard Lane 14')
    expect(message?.body).toContain('Dear Hanna Vale')
    expect(message?.body).toContain('before December 2026')
    expect(message?.body).toContain('Quarry Road Soft Water')
    expect((await decide('release')).results).toMatchObject([{ done: false, reason: 'It was already approved.' }])
    await raise()
    expect(await messages()).toHaveLength(1)
    expect(await reminders()).toMatchObject([{ state: 'released' }])
  })

  test('holds it and frees it; what is held moves with its window and can be released', async () => {
    await raise()
    expect((await decide('hold')).results).toMatchObject([{ done: true }])
    await moveWindow('2026-12-24', '2030-03-01')
    await raise()
    expect(await reminders()).toMatchObject([{ state: 'held', dueEarliest: dateOf('2026-12-24') }])
    expect((await decide('unhold')).results).toMatchObject([{ done: true }])
    expect((await decide('unhold')).results).toMatchObject([{ done: false, reason: 'It’s not on hold.' }])
    await decide('hold')
    expect((await decide('release')).results).toMatchObject([{ done: true }])
  })

  test('is told when the consent was withdrawn meanwhile, and nothing is sent', async () => {
    await raise()
    await withdrawConsent()
    const { results } = await decide('release')
    expect(results).toMatchObject([{ done: false, reason: expect.stringContaining('no longer agrees') }])
    expect(await messages()).toEqual([])
    expect(await reminders()).toMatchObject([{ state: 'waiting' }])
  })

  test('is told when it changed since the list was opened, and one that is not there does not stop the others', async () => {
    await raise()
    expect((await decide('release', { version: 9 })).results).toMatchObject([
      { done: false, reason: expect.stringContaining('changed after') },
    ])
    const [one] = await reminders()
    const missing = newId()
    const both = [
      { id: missing, version: 1 },
      { id: one?.id ?? '', version: 1 },
    ]
    const { results } = await decideReminders(firm, { ...id(), decision: 'release', reminders: both })
    expect(Object.fromEntries(results.map((result) => [result.id, result.done]))).toEqual({ [missing]: false, [one?.id ?? '']: true })
  })

  test('of two releases at the same moment one makes the message', async () => {
    await raise()
    const answers = await Promise.all([decide('release'), decide('release')])
    expect(answers.map(({ results }) => results[0]?.done).sort()).toEqual([false, true])
    expect(await messages()).toHaveLength(1)
  })
})
