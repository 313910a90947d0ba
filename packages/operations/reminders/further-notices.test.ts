import { closeClients } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { setConsent } from '../customers/set-consent.ts'
import { proposeIn, proposeJob } from '../jobs/propose-job.ts'
import { answerReminder } from './answer-reminder.ts'
import { decideReminders } from './decide-reminders.ts'
import { deliverMessages, type Ways } from './deliver-messages.ts'
import { raiseReminders } from './raise-reminders.ts'

let db: pg.Client
let firm: FirmRecords
let mailed: string[]

const id = () => ({ commandId: newId() })
const DAY_MS = 86_400_000
const onDay = (day: number) => setClock(() => new Date(Date.parse(NOW) + day * DAY_MS))
const ways: Ways = {
  email: async ({ body }) => {
    mailed.push(body)
    return { outcome: 'taken' }
  },
}
const reminders = () => inCompany(firm, (tx) => tx.reminder.findMany({ orderBy: { createdAt: 'asc' } }))
const states = async () => (await reminders()).map((one) => `${one.notice} ${one.state}`)
const rules = (reminderNotices: number, reminderAgainDays: number) =>
  inCompany(firm, (tx) => tx.companySettings.updateMany({ data: { reminderNotices, reminderAgainDays } }))

/** A night and the morning after it: what waits is approved and sent. */
async function nightAndMorning(day: number) {
  onDay(day)
  await raiseReminders(firm)
  const waiting = (await reminders()).filter((one) => one.state === 'waiting').map(({ id: one, version }) => ({ id: one, version }))
  if (waiting.length > 0) await decideReminders(firm, { ...id(), decision: 'release', reminders: waiting })
  await deliverMessages(firm, ways)
}

beforeAll(async () => {
  db = await inspector()
})
beforeEach(async () => {
  onDay(0)
  mailed = []
  firm = await makeFirmRecords(db)
  for (const table of ['message', 'reminder_answer', 'reminder', 'phone_call']) {
    if (table === 'phone_call') await db.query('delete from call_back where company_id = $1', [firm.companyId])
    await db.query(`delete from ${table} where company_id = $1`, [firm.companyId])
  }
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('by the firm’s rules', () => {
  test.each([
    [1, 30, 1],
    [2, 30, 2],
    [3, 10, 3],
  ])(
    'at most %i notices, %i days apart, are %i mails in a year, however the window moves',
    async (most, days, mails) => {
      await rules(most, days)
      for (let day = 0; day < 365; day += 5) {
        const due10Day = dateOf(`2027-0${1 + (day % 9)}-11`)
        await inCompany(firm, (tx) => tx.bedForecast.updateMany({ where: { bedId: firm.bedId }, data: { due10Day } }))
        await nightAndMorning(day)
      }
      expect(mailed).toHaveLength(mails)
      expect(mailed.map((body) => body.includes('We wrote to you about this before'))).toEqual([false, true, true].slice(0, mails))
    },
    60_000,
  )

  test('the second comes so many days after the first was sent, and not before', async () => {
    await rules(2, 30)
    await nightAndMorning(0)
    await nightAndMorning(29)
    expect(await states()).toEqual(['due-window released'])
    await nightAndMorning(30)
    expect(await states()).toEqual(['due-window released', 'due-window-2 released'])
  })

  test('one that was never sent, or that came back, is followed by nothing', async () => {
    await rules(3, 10)
    await nightAndMorning(0)
    await db.query('set session_replication_role = replica')
    for (const state of ['uncertain', 'refused', 'bounced', 'withdrawn', 'approved']) {
      await db.query('update message set state = $2 where company_id = $1', [firm.companyId, state])
      onDay(40)
      await raiseReminders(firm)
      expect([state, await states()]).toEqual([state, ['due-window released']])
    }
    await db.query('set session_replication_role = origin')
  })
})

describe('no second notice', () => {
  const call = { sees: null, words: null, advised: null, follows: 'nothing' }
  test.each([
    ['after it is booked', () => proposeJob(firm, { ...id(), siteId: firm.siteId, bedId: firm.bedId, kind: 'rebed' })],
    ['to somebody who moved away', () => inCompany(firm, (tx) => tx.contact.updateMany({ data: { archivedAt: new Date(NOW) } }))],
    [
      'to somebody who sold the house',
      () =>
        inCompany(firm, async (tx) => {
          await tx.contact.updateMany({ where: { id: firm.contactId }, data: { siteId: null } })
          await tx.tenure.updateMany({ where: { siteId: firm.siteId }, data: { toDay: dateOf('2026-12-05') } })
        }),
    ],
    [
      'to somebody who called since',
      () =>
        inCompany(firm, (tx) =>
          tx.phoneCall.create({
            data: {
              companyId: firm.companyId,
              id: newId(),
              at: new Date(Date.parse(NOW) + DAY_MS),
              personId: firm.personId,
              siteId: firm.siteId,
              ...call,
            },
          }),
        ),
    ],
    [
      'to somebody who wants no more of it',
      () =>
        setConsent(firm, {
          ...{ ...id(), contactId: firm.contactId, channel: 'email', granted: false, source: 'call', sinceDay: '2026-12-03', version: 1 },
        }),
    ],
    [
      'to somebody who answered',
      async () => {
        const [one] = await reminders()
        await answerReminder(
          { companyId: firm.companyId, reminderId: one?.id ?? '' },
          { kind: 'not-now', askAfter: '2027-12-01' },
          proposeIn,
        )
      },
    ],
    [
      'for a bed that has ended',
      () =>
        inCompany(firm, (tx) =>
          tx.bed.updateMany({
            where: { id: firm.bedId },
            data: { endedEarliest: dateOf('2026-12-03'), endedLatest: dateOf('2026-12-03'), endCause: 'worn' },
          }),
        ),
    ],
  ] as const)('%s', async (_, happens) => {
    await rules(2, 30)
    await nightAndMorning(0)
    await happens()
    await nightAndMorning(31)
    expect(await states()).toEqual(['due-window released'])
    expect(mailed).toHaveLength(1)
  })

  test('that waits already, once its customer answers the first: it is dropped, and can’t be approved meanwhile', async () => {
    await rules(2, 30)
    await nightAndMorning(0)
    onDay(31)
    await raiseReminders(firm)
    const [first, second] = await reminders()
    onDay(32)
    await answerReminder({ companyId: firm.companyId, reminderId: first?.id ?? '' }, { kind: 'not-now', askAfter: '2027-12-01' }, proposeIn)
    const asked = [{ id: second?.id ?? '', version: second?.version ?? 0 }]
    const { results } = await decideReminders(firm, { ...id(), decision: 'release', reminders: asked })
    expect(results).toMatchObject([{ done: false, reason: expect.stringContaining('has answered') }])
    await raiseReminders(firm)
    expect(await states()).toEqual(['due-window released', 'due-window-2 dropped'])
  })
})

describe('quiet hours', () => {
  test('are those of the customer’s own place', async () => {
    // Honolulu, by the United States' time zones (49 CFR 71.12): UTC-10 all year. The company is in Phoenix, UTC-7.
    await inCompany(firm, (tx) => tx.site.updateMany({ where: { id: firm.siteId }, data: { latitude: 21.31, longitude: -157.86 } }))
    await nightAndMorning(0) // 16:00 UTC: 9 AM in Phoenix, 6 AM in Honolulu
    expect(mailed).toEqual([])
    const [message] = await inCompany(firm, (tx) => tx.message.findMany())
    expect(message).toMatchObject({ state: 'approved', tries: 0, tryAfter: new Date('2026-12-02T18:00:00Z') })
    setClock(() => new Date('2026-12-02T18:00:00Z'))
    await deliverMessages(firm, ways)
    expect(mailed).toHaveLength(1)
  })

  test('are those that the firm sets', async () => {
    await inCompany(firm, (tx) => tx.companySettings.updateMany({ data: { sendFromMinute: 10 * 60, sendUntilMinute: 12 * 60 } }))
    await nightAndMorning(0) // 9 AM in Phoenix
    expect(mailed).toEqual([])
    setClock(() => new Date('2026-12-02T17:00:00Z'))
    await deliverMessages(firm, ways)
    expect(mailed).toHaveLength(1)
  })
})
