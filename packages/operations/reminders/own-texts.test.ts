import type { SaveTextInput } from '@almanac/contract/own-texts'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { decideReminders } from './decide-reminders.ts'
import { listTexts, returnToStandard, saveText } from './own-texts.ts'
import { previewText } from './preview-text.ts'
import { raiseReminders } from './raise-reminders.ts'

let db: pg.Client
let firm: FirmRecords

const id = () => ({ commandId: newId() })
const OWN = {
  channel: 'email',
  language: 'en',
  subject: 'News of {{ site }}',
  body: 'Hi {{ name }} {{ resin_volume }}\n\n{{ answer_link }}',
} as const
const save = (more: Partial<SaveTextInput> = {}) => saveText(firm, { ...id(), ...OWN, version: 0, ...more })
const found = async (language: 'en' | 'es' = 'en') =>
  (await listTexts(firm)).texts.find((one) => one.channel === 'email' && one.language === language)
const preview = (more: object = {}) => previewText(firm, { ...OWN, bedId: firm.bedId, siteId: null, ...more }, 'https://x.example/1')

/** What is written down when everything that waits is approved. */
async function approved() {
  await raiseReminders(firm)
  const waiting = await inCompany(firm, (tx) => tx.reminder.findMany({ where: { state: 'waiting' }, select: { id: true, version: true } }))
  await decideReminders(firm, { ...id(), decision: 'release', reminders: waiting })
  return inCompany(firm, (tx) => tx.message.findFirstOrThrow({ where: { reminderId: { not: null } } }))
}

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(NOW))
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
  for (const table of ['message', 'reminder_answer', 'reminder'])
    await db.query(`delete from ${table} where company_id = $1`, [firm.companyId])
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a company’s own text', () => {
  test('is what its reminders say, in that language, until the standard one is taken back', async () => {
    expect(await found()).toMatchObject({ version: 0, own: null })
    const { version } = await save()
    expect(await found()).toMatchObject({ version, own: { subject: OWN.subject, body: OWN.body } })
    expect(await approved()).toMatchObject({
      subject: 'News of Orchard Lane 14',
      body: expect.stringMatching(/^Hi Hanna Vale .*\n\n\[answer link\]$/),
    })
    expect((await returnToStandard(firm, { ...id(), channel: 'email', language: 'en', version })).version).toBe(version + 1)
    expect(await found()).toMatchObject({ own: null })
  })

  test('leaves the other language as it is', async () => {
    await save()
    await db.query(`update contact set language = 'es' where company_id = $1`, [firm.companyId])
    expect((await approved()).subject).toBe('La resina de su ablandador de agua en Orchard Lane 14')
    expect(await found('es')).toMatchObject({ own: null })
  })

  test('of two who write it at once is one’s, and the other is told', async () => {
    const both = await Promise.allSettled([save(), save({ subject: 'Another' })])
    expect(both.map((one) => one.status).sort()).toEqual(['fulfilled', 'rejected'])
    const [lost] = both.filter((one) => one.status === 'rejected')
    expect(lost?.reason).toMatchObject({ code: 'version-conflict' })
  })

  test.each([
    [{ body: 'Hi {{ name }}' }, 'Keep {{ answer_link }} in the text'],
    [{ body: '{{ answer_link }} {{ nmae }}' }, 'There’s no “nmae” to fill in (line 1)'],
    [{ subject: ' ' }, 'Enter a subject.'],
    [{ channel: 'letter', body: '{{ answer_link }}' }, 'There’s no “answer_link” to fill in'],
  ] as const)('%j is refused', async (more, said) => {
    await expect(save(more as Partial<SaveTextInput>)).rejects.toMatchObject({ code: 'invalid', message: expect.stringContaining(said) })
    expect(await found()).toMatchObject({ version: 0 })
  })
})

describe('a preview', () => {
  test('is filled in for a bed, for a site’s own, and for somebody made up', async () => {
    const ofBed = await preview()
    expect(ofBed).toMatchObject({ subject: 'News of Orchard Lane 14', wrong: null, text: null })
    expect(await preview({ bedId: null, siteId: firm.siteId })).toEqual(ofBed)
    expect((await preview({ bedId: null })).body).toContain('Maximiliana Featherstonehaugh-Cholmondeley 1½')
  })

  test('follows the company’s units', async () => {
    await db.query(`update company set unit_system = 'metric' where id = $1`, [firm.companyId])
    expect((await preview({ bedId: null })).body).toMatch(/ 42(\.5)? L/) // 28.3168 L/ft³
  })

  test('says where a text is wrong, and how many texts it makes', async () => {
    expect(await preview({ body: 'one\n{{ nmae }}' })).toMatchObject({
      body: null,
      wrong: { field: 'body', sentence: expect.stringContaining('line 2') },
    })
    expect(await preview({ channel: 'text', subject: '', bedId: null })).toMatchObject({ text: { parts: 2, wide: '½' } })
  })
})
