import type { ChangeSettingsInput } from '@almanac/contract/firm'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readFigureHistory } from '@almanac/database/read/firm-figures'
import { readSettings } from '@almanac/database/read/firm-settings'
import { headLines } from '@almanac/records/letterhead'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import sharp from 'sharp'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { type Firm, makeFirm } from '../jobs/test-firm.ts'
import { companyFacts } from '../shared/company-facts.ts'
import { openLetterhead } from '../shared/open-letterhead.ts'
import { changeLogo } from './change-logo.ts'
import { changeSettings } from './change-settings.ts'

let firm: Firm

const change = async (part: Partial<ChangeSettingsInput>, of = firm) => {
  const { version, logo: _logo, ...now } = await readSettings(of)
  return changeSettings(of, { commandId: newId(), version, note: null, ...now, ...part })
}
const changes = async () => (await readFigureHistory(firm, { limit: 50 }, () => null)).rows

beforeAll(() => testDatabase())
beforeEach(async () => {
  firm = await makeFirm()
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

describe('the company itself', () => {
  test('is renamed and prints on another paper, in the history like everything else, and what is left out stays', async () => {
    await change({ name: 'Quarry Road Water', paper: 'a4' })
    await change({ name: undefined, paper: undefined, telephone: '(630) 555-0142' })
    expect(await readSettings(firm)).toMatchObject({ name: 'Quarry Road Water', paper: 'a4', telephone: '(630) 555-0142' })
    expect((await changes()).map(({ field }) => field).sort()).toEqual(['name', 'paper', 'telephone'])
  })
})

describe('the head of the company’s papers', () => {
  const head = { headAddress: '12 Weir Road\nLarkmoor AZ 85001', headMail: 'office@larkmoor.example', headLicence: 'ROC 123456' }
  const white = () => sharp({ create: { width: 1200, height: 300, channels: 3, background: '#336699' } })

  test('is said in lines, with a logo drawn anew and small enough for a paper, and taken off again', async () => {
    await change(head)
    const { version } = await readSettings(firm)
    const sent = await white()
      .withExif({ IFD0: { ImageDescription: 'hidden' } })
      .jpeg()
      .toBuffer()
    await changeLogo(firm, { commandId: newId(), version, picture: sent.toString('base64') })
    const opened = await openLetterhead(firm)
    expect(headLines(opened)).toEqual(['12 Weir Road', 'Larkmoor AZ 85001', 'office@larkmoor.example', 'ROC 123456'])
    // 1200 × 300 inside 600 × 208.
    expect(opened.logo).toMatchObject({ width: 600, height: 150 })
    const png = Buffer.from(opened.logo?.png ?? [])
    expect([(await sharp(png).metadata()).format, png.includes('hidden')]).toEqual(['png', false])
    expect((await changes()).map(({ field, to }) => [field, to])).toContainEqual(['logo', 'set'])
    await changeLogo(firm, { commandId: newId(), version: version + 1, picture: null })
    expect((await openLetterhead(firm)).logo).toBeNull()
  })

  test('takes no logo that is none, and none over a newer one', async () => {
    await change(head)
    const { version } = await readSettings(firm)
    const send = (bytes: Buffer, seen = version) =>
      changeLogo(firm, { commandId: newId(), version: seen, picture: bytes.toString('base64') })
    const drawing = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"/>')
    await expect(send(drawing)).rejects.toMatchObject({ code: 'invalid', message: expect.stringContaining('PNG or JPEG') })
    await send(await white().png().toBuffer())
    await expect(send(await white().negate().png().toBuffer())).rejects.toMatchObject({ code: 'version-conflict' })
    const { logo } = await openLetterhead(firm)
    const { data } = await sharp(Buffer.from(logo?.png ?? []))
      .raw()
      .toBuffer({ resolveWithObject: true })
    expect([...data.subarray(0, 3)]).toEqual([0x33, 0x66, 0x99])
  })
})

describe('settings', () => {
  test('of a firm that never said are the usual ones, the same as the table’s own', async () => {
    const { version: none, ...usual } = await readSettings(firm)
    expect(none).toBe(0)
    await inCompany(firm, (tx) => tx.companySettings.create({ data: { companyId: firm.companyId, id: newId() } }))
    const { version, ...stored } = await readSettings(firm)
    expect(version).toBe(1)
    expect(stored).toEqual(usual)
  })

  test('are changed for the first time and again, with a line in the history for each value that moved', async () => {
    await change({ reminderLeadDays: 45, plannedRebedMinor: 42_000, note: 'counted last year' })
    await change({ dayStart: '07:30' })
    expect(await readSettings(firm)).toMatchObject({ reminderLeadDays: 45, plannedRebedMinor: 42_000, dayStart: '07:30', dayEnd: '17:00' })
    expect((await changes()).map(({ field, from, to, note }) => [field, from, to, note]).sort()).toEqual([
      ['dayStart', '08:00', '07:30', null],
      ['plannedRebedMinor', null, 42_000, 'counted last year'],
      ['reminderLeadDays', 60, 45, 'counted last year'],
    ])
  })

  test('cost what is plausible: what is unusual is asked back, and stands with a reason; what stood before is not asked again', async () => {
    // $3 and $4,000,000 for a rebed, $9,000 an hour of overtime: slips of the decimal point. Bounds: common practice, no source.
    for (const part of [{ plannedRebedMinor: 300 }, { plannedRebedMinor: 400_000_000 }, { overtimeMinorPerHour: 900_000 }])
      await expect(change(part)).rejects.toMatchObject({
        code: 'invalid',
        message: expect.stringContaining('unusual'),
        detail: { odd: true },
      })
    await change({ plannedRebedMinor: 300, note: 'our own people, our own resin' })
    await change({ rebedsPerMonth: 21 })
    expect(await readSettings(firm)).toMatchObject({ plannedRebedMinor: 300, rebedsPerMonth: 21 })
  })

  test('seen before someone changed them are refused with both values', async () => {
    const before = await readSettings(firm)
    await change({ rebedsPerMonth: 14 })
    await expect(change({ rebedsPerMonth: 20 })).resolves.toMatchObject({ version: 3 })
    await expect(change({ rebedsPerMonth: 8, version: before.version })).rejects.toMatchObject({
      code: 'version-conflict',
      detail: { current: { rebedsPerMonth: 20 }, sent: { rebedsPerMonth: 8 } },
    })
    expect((await readSettings(firm)).rebedsPerMonth).toBe(20)
  })

  test('set for the first time by five at once: one stands', async () => {
    const { logo: _logo, ...seen } = await readSettings(firm)
    const all = [11, 12, 13, 14, 15].map((rebedsPerMonth) =>
      changeSettings(firm, { commandId: newId(), note: null, ...seen, rebedsPerMonth }),
    )
    const tries = await Promise.allSettled(all)
    expect(tries.filter((one) => one.status === 'fulfilled')).toHaveLength(1)
    for (const one of tries) if (one.status === 'rejected') expect(one.reason).toMatchObject({ code: 'version-conflict' })
    expect(await changes()).toHaveLength(1)
  })

  test('say how numbers and days are written; that holds for the company, and left out stays', async () => {
    const other = await makeFirm()
    await change({ locale: 'en-GB', note: 'we write 3 Dec' })
    expect((await readSettings(firm)).locale).toBe('en-GB')
    expect((await inCompany(firm, (tx) => companyFacts(tx, firm.companyId))).locale).toBe('en-GB')
    expect((await readSettings(other)).locale).toBe('en-US')
    await expect(change({ locale: 'xx-YY' })).rejects.toMatchObject({ code: 'invalid', message: expect.stringContaining('"xx-YY"') })
    await change({ locale: undefined, reminderLeadDays: 30 })
    expect((await readSettings(firm)).locale).toBe('en-GB')
    expect((await changes()).map(({ field, from, to }) => [field, from, to])).toContainEqual(['locale', 'en-US', 'en-GB'])
  })

  test('that would end the day before it begins are refused, and nothing is written', async () => {
    await expect(change({ dayStart: '17:00', dayEnd: '09:00' })).rejects.toMatchObject({
      code: 'invalid',
      message: expect.stringMatching(/cannot end at 9:00\sAM/),
    })
    expect(await inCompany(firm, (tx) => tx.companySettings.count())).toBe(0)
    await change({ dayStart: '09:00', dayEnd: '17:00' })
  })

  test('are the firm’s alone', async () => {
    const other = await makeFirm()
    await change({ riskLimit: 0.1 }, other)
    expect((await readSettings(firm)).riskLimit).toBe(0.3)
    expect((await readSettings(other)).riskLimit).toBe(0.1)
  })
})
