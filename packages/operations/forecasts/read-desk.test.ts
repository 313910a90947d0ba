import { closeClients } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readDueBeds } from '@almanac/database/read/due-beds'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { recordCall } from '../calls/record-call.ts'
import { proposeIn } from '../jobs/propose-job.ts'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeForecast } from '../jobs/test-firm.ts'
import { readDesk } from './read-desk.ts'

const ZONE = 'America/Phoenix'
let firm: Firm
let places: Awaited<ReturnType<typeof makeBed>>[]

const desk = () => readDesk(firm, ZONE)
const toCall = async () => (await readDueBeds(firm, { toCall: true, sort: 'failed', limit: 50 }, DAY)).rows
const own = () => ({ companyId: firm.companyId })
const call = (place: { siteId: string; softenerId: string }, said: Partial<Parameters<typeof recordCall>[1]>) =>
  recordCall(
    firm,
    {
      ...{ commandId: newId(), siteId: place.siteId, softenerId: place.softenerId, callerName: '', callerPhone: '', sees: null },
      ...{ words: '', advised: '', stillSoft: false, hardSinceDay: null, follows: { what: 'nothing' as const } },
      ...said,
    },
    proposeIn,
  )
const noAnswer = { follows: { what: 'call-back' as const, day: '2026-12-04' } }
beforeAll(() => setClock(() => new Date(`${DAY}T16:00:00Z`)))
beforeEach(async () => {
  firm = await makeFirm()
  places = []
  for (const [i, failed] of [0.6, 0.9, 0.8, 0.3].entries()) {
    const place = await makeBed(firm, `Elm Street ${i + 1}`)
    await makeForecast(firm, place, '2024-05-01', '2030-05-01')
    await inCompany(firm, (tx) =>
      tx.bedForecast.updateMany({ where: { ...own(), bedId: place.bedId }, data: { chanceAlreadyFailed: failed, chance12Months: 0.1 } }),
    )
    places.push(place)
  }
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('whom to call', () => {
  test('is who has more likely failed than not, the surest first; the number is that of the list', async () => {
    const rows = await toCall()
    expect(rows.map((row) => row.siteLabel)).toEqual(['Elm Street 2', 'Elm Street 3', 'Elm Street 1'])
    // 0.6 + 0.9 + 0.8 + 0.3, by hand.
    expect(await desk()).toMatchObject({ beds: 4, toCall: rows.length, answered: 0, unseen: expect.closeTo(2.6, 9) })
  })

  test('an answer stays beside its row: nobody there today, hard since a day; a rebed on its way takes the bed off the page', async () => {
    const [, second, third] = places as [(typeof places)[0], (typeof places)[0], (typeof places)[0]]
    await call(second, noAnswer)
    await call(third, { hardSinceDay: '2026-09-01', sees: 'hard-water' })
    expect(await desk()).toMatchObject({ toCall: 3, answered: 2 })
    expect((await toCall()).map((row) => row.answer?.hardSinceDay)).toEqual([null, '2026-09-01', undefined])
    await call(third, { follows: { what: 'visit', visit: 'rebed' } })
    expect(await desk()).toMatchObject({ toCall: 2, answered: 1, unseen: expect.closeTo(1.8, 9) })
    expect((await toCall()).map((row) => row.siteLabel)).toEqual(['Elm Street 2', 'Elm Street 1'])
    // The next day whoever did not answer is to be called again.
    setClock(() => new Date('2026-12-04T16:00:00Z'))
    expect(await desk()).toMatchObject({ toCall: 2, answered: 0 })
    setClock(() => new Date(`${DAY}T16:00:00Z`))
  })

  test('another company’s beds and calls are none of it', async () => {
    const other = await makeFirm()
    expect(await readDesk(other, ZONE)).toMatchObject({ beds: 0, toCall: 0, answered: 0, unseen: 0 })
  })
})

describe('crew hours', () => {
  const months = async (needed: [month: string, mean: number][]) => {
    const run = await inCompany(firm, (tx) => tx.forecastRun.findFirstOrThrow({ where: own(), orderBy: { id: 'desc' } }))
    const row = { ...own(), runId: run.id, waterSupplyId: null, beds: 4 }
    await inCompany(firm, (tx) =>
      tx.forecastMonth.createMany({
        data: needed.map(([month, mean]) => ({
          ...row,
          id: newId(),
          month: dateOf(month),
          months: 1,
          mean,
          low: mean / 2,
          middle: mean,
          high: mean * 2,
        })),
      }),
    )
  }

  test('are those of shifts and days off, two people at a time, driving taken out; the need adds what has failed unseen', async () => {
    await months([
      ['2026-12-01', 3],
      ['2027-01-01', 5],
    ])
    const person = await makeColleague(firm, 'Petra')
    await makeColleague(firm, 'Tomas')
    await inCompany(firm, (tx) =>
      tx.absence.create({
        data: {
          ...own(),
          id: newId(),
          colleagueId: person,
          fromDay: dateOf('2027-01-01'),
          untilDay: dateOf('2027-01-31'),
          word: null,
        } as never,
      }),
    )
    const { months: ahead, hoursEach, crewsFrom } = await desk()
    const [december, january] = ahead
    expect(crewsFrom).toBe('shifts')
    // A 10 in tank takes two hours (common practice, no source). 3 December 2026 is a Thursday: 21 weekdays are left of the month; January 2027 has 21.
    expect(hoursEach).toBe(2)
    // 21 days × 9 h (8:00 to 17:00) × 2 people × three quarters ÷ 2; in January one of them is away.
    expect([december?.crewHours, january?.crewHours]).toEqual([expect.closeTo(141.75, 6), expect.closeTo(70.875, 6)])
    expect(january?.away).toEqual([{ name: 'Petra', fromDay: '2027-01-01', untilDay: '2027-01-31' }])
    // (3 + 2.6 ÷ 12) × 2 h.
    expect(december?.hours).toEqual({ mean: expect.closeTo(6.4333, 3), low: expect.closeTo(3.4333, 3), high: expect.closeTo(12.4333, 3) })
    expect(ahead.map((one) => one.month).slice(0, 2)).toEqual(['2026-12', '2027-01'])
    expect(ahead).toHaveLength(12)
  })

  test('leave out public holidays and the company’s lunch, and name nobody for them', async () => {
    await makeColleague(firm, 'Petra')
    await inCompany(firm, (tx) =>
      tx.companySettings.create({
        data: { ...own(), id: newId(), holidayArea: 'US', lunchMinutes: 60 },
      }),
    )
    const [december, january] = (await desk()).months
    // Federal holidays, 5 U.S.C. 6103: 25 December 2026, 1 and 18 January 2027. (21 − 1) and (21 − 2) days × 8 h × three quarters ÷ 2.
    expect([december?.crewHours, january?.crewHours]).toEqual([expect.closeTo(60, 6), expect.closeTo(57, 6)])
    expect([december?.away, january?.away]).toEqual([[], []])
  })

  test('come from the company’s setting where nobody is on day sheets, of the present month what is left of it', async () => {
    await inCompany(firm, (tx) => tx.companySettings.create({ data: { ...own(), id: newId(), rebedsPerMonth: 31 } }))
    const { months: ahead, crewsFrom } = await desk()
    // 31 rebeds × 2 h; of December 29 of 31 days are left.
    expect([crewsFrom, ahead[0]?.crewHours, ahead[1]?.crewHours]).toEqual(['setting', expect.closeTo(58, 6), expect.closeTo(62, 6)])
  })
})
