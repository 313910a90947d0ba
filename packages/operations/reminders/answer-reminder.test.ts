import { closeClients } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { proposeIn } from '../jobs/propose-job.ts'
import { answerReminder, type LinkAnswer } from './answer-reminder.ts'
import { decideReminders } from './decide-reminders.ts'
import { endLink } from './end-link.ts'
import { raiseReminders } from './raise-reminders.ts'
import { readReminderLink } from './read-reminder-link.ts'

let db: pg.Client
let firm: FirmRecords
let reminderId: string

const standAt = (instant: string) => setClock(() => new Date(instant))
const answer = (said: LinkAnswer) => answerReminder({ companyId: firm.companyId, reminderId }, said, proposeIn)
const link = () => readReminderLink({ companyId: firm.companyId, reminderId })
const reminders = () => inCompany(firm, (tx) => tx.reminder.findMany({ orderBy: { createdAt: 'asc' } }))
const rows = async (sql: string) => (await db.query(sql, [firm.companyId])).rows
const callBacks = () => rows(`select note from call_back where company_id = $1 and note like 'By the link%'`)

beforeAll(async () => {
  db = await inspector()
})
beforeEach(async () => {
  standAt(NOW)
  firm = await makeFirmRecords(db)
  for (const table of ['message', 'reminder_answer', 'reminder'])
    await db.query(`delete from ${table} where company_id = $1`, [firm.companyId])
  await raiseReminders(firm)
  const [one] = await reminders()
  reminderId = one?.id ?? ''
  await decideReminders(firm, { commandId: newId(), decision: 'release', reminders: [{ id: reminderId, version: 1 }] })
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a customer says by the link', () => {
  test('which days suit: a rebed is added with them, for somebody to place', async () => {
    expect(await answer({ kind: 'days', days: 'Tuesdays, after four' })).toBe(true)
    const jobs = await rows(`select state, notes, asked_for from job where company_id = $1 and kind = 'rebed' and bed_id = '${firm.bedId}'`)
    expect(jobs).toEqual([{ state: 'proposed', notes: null, asked_for: { by: 'link', days: 'Tuesdays, after four' } }])
    expect(await link()).toMatchObject({ state: 'answered', answer: { kind: 'days' } })
  })

  test('not now: nothing until their day, then one reminder more and no third', async () => {
    await answer({ kind: 'not-now', askAfter: '2027-03-02' })
    standAt('2027-03-01T16:00:00Z')
    await raiseReminders(firm)
    expect(await reminders()).toHaveLength(1)
    for (const day of ['2027-03-02', '2027-03-03', '2027-06-01']) {
      standAt(`${day}T16:00:00Z`)
      await raiseReminders(firm)
      expect((await reminders()).map((one) => [one.notice, one.state])).toEqual([
        ['due-window', 'released'],
        ['again-2027-03-02', 'waiting'],
      ])
    }
  })

  test('already done: the bed ends that day, one that nobody knows more of begins, and somebody asks which', async () => {
    await answer({ kind: 'done', day: '2026-10-15', by: 'other-company' })
    const beds = await inCompany(firm, (tx) => tx.bed.findMany({ where: { tankId: firm.tankId }, orderBy: { beganEarliest: 'asc' } }))
    expect(beds.map((bed) => [bed.id === firm.bedId, dayOf(bed.endedLatest), bed.endCause, dayOf(bed.beganLatest), bed.resinKind])).toEqual(
      [
        [true, '2026-10-15', 'unknown', '2014-03-01', 'gel-8'],
        [false, null, null, '2026-10-15', 'unknown'],
      ],
    )
    expect(await callBacks()).toEqual([{ note: expect.stringMatching(/replaced by another company, Oct 15, 2026/) }])
  })

  test.each(['2026-12-03', '2014-02-28', '1999-01-01'])('done on %s, which cannot be, and nothing changes', async (day) => {
    await expect(answer({ kind: 'done', day, by: 'self' })).rejects.toMatchObject({ code: 'invalid' })
    expect(await rows(`select 1 from reminder_answer where company_id = $1`)).toEqual([])
    expect(await link()).toMatchObject({ state: 'open' })
  })

  test('moved: the contact of the house is archived, and somebody finds out who lives there', async () => {
    await answer({ kind: 'moved' })
    expect(await rows(`select archived_at is not null as gone from contact where company_id = $1 and id = '${firm.contactId}'`)).toEqual([
      { gone: true },
    ])
    expect(await callBacks()).toHaveLength(1)
    expect(await link()).toMatchObject({ state: 'answered', answer: { kind: 'moved' } })
  })

  test('no more: the consent is withdrawn as if on a call, however often and however late', async () => {
    standAt('2028-12-02T16:00:00Z')
    for (let times = 0; times < 2; times++) expect(await answer({ kind: 'stop' })).toBe(true)
    expect(await rows(`select granted, source from consent where company_id = $1 and contact_id = '${firm.contactId}'`)).toEqual([
      { granted: false, source: 'link' },
    ])
  })

  test('something else a second time: the first answer stays', async () => {
    await answer({ kind: 'not-now', askAfter: '2027-03-02' })
    expect(await answer({ kind: 'moved' })).toBe(true)
    expect(await rows(`select kind from reminder_answer where company_id = $1`)).toEqual([{ kind: 'not-now' }])
    expect(await callBacks()).toEqual([])
  })

  test('two things at one moment: one of them holds', async () => {
    await Promise.all([answer({ kind: 'days', days: 'Monday' }), answer({ kind: 'days', days: 'Monday' })])
    expect(await rows(`select 1 from job where company_id = $1 and kind = 'rebed' and bed_id = '${firm.bedId}'`)).toHaveLength(1)
  })
})

describe('the link', () => {
  test('shows why, the place and the company’s number, and nobody’s name, address or number', async () => {
    const shown = await link()
    expect(shown).toMatchObject({ state: 'open', companyName: 'Quarry Road Soft Water', place: 'Orchard Lane 14', offerId: null })
    expect(shown?.why('en-US')).toContain('We suggest new resin before December 2026.')
    expect(shown?.why('es-US')).toContain('diciembre de 2026')
    for (const secret of ['Hanna', '555 0134', 'orchard.example']) expect(JSON.stringify(shown)).not.toContain(secret)
  })

  test('ends after half a year, and when its reader left', async () => {
    standAt('2027-06-01T16:00:00Z')
    expect(await link()).toMatchObject({ state: 'gone', place: null })
    expect(await answer({ kind: 'moved' })).toBe(false)
    standAt(NOW)
    await db.query('update contact set archived_at = now() where company_id = $1', [firm.companyId])
    expect(await link()).toMatchObject({ state: 'gone', place: null })
    expect(await answer({ kind: 'days', days: 'Monday' })).toBe(false)
  })

  test('ends when somebody at a desk ends it, once', async () => {
    const end = () => endLink(firm, { commandId: newId(), reminderId })
    expect([await end(), await end()]).toEqual([{ ended: true }, { ended: false }])
    expect(await link()).toMatchObject({ state: 'gone' })
    expect(await answer({ kind: 'days', days: 'Monday' })).toBe(false)
  })

  test('of a reminder that nobody approved is none', async () => {
    await db.query('update reminder set link_until = null where company_id = $1', [firm.companyId])
    expect(await link()).toBeNull()
    expect(await answer({ kind: 'stop' })).toBe(false)
  })
})
