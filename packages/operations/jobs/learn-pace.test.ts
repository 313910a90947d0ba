import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'
import { learnPace } from './travel-desk.ts'

const ZONE = 'America/Phoenix'
let firm: Firm
let jobs: string[]
let crew: { name: string; colleagueIds: string[]; vehicleId: string; from: string; until: string }

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-20T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
  crew = {
    name: 'Ruth',
    colleagueIds: [await makeColleague(firm, 'Ruth')],
    vehicleId: await makeVehicle(firm),
    from: '06:00',
    until: '22:00',
  }
  // Seven sites in a row north, a tenth of a degree apart: 6.909 miles straight (6,371.0088 km × π ÷ 1800), some 8.6 by road, at usual speeds about 16 minutes.
  jobs = await Promise.all(
    Array.from({ length: 7 }, async (_, n) => {
      const { siteId, bedId } = await makeBed(firm, `Mile ${n}`)
      const place = { latitude: 41 + n / 10, longitude: -88.44 }
      await inCompany(firm, (tx) => tx.site.update({ where: { companyId_id: { companyId: firm.companyId, id: siteId } }, data: place }))
      return (await proposeJob(firm, { commandId: newId(), siteId, bedId, kind: 'inspection' })).jobId
    }),
  )
})
afterAll(async () => {
  setClock()
  await closeClients()
})

/** Seven visits a day for some days, each as it was written down: minutes since midnight in the firm's zone, seven hours behind UTC. */
async function driven(days: number, times: (n: number) => { begun: number; ended: number }) {
  const { companyId } = firm
  for (let d = 0; d < days; d++) {
    const day = `2026-12-${String(7 + d).padStart(2, '0')}`
    const { crewDayId } = await openDaySheet(firm, { commandId: newId(), ...crew, day })
    const at = (minute: number) => new Date(Date.parse(`${day}T07:00:00Z`) + minute * 60_000)
    await inCompany(firm, (tx) =>
      tx.visit.createMany({
        data: jobs.map((jobId, n) => {
          const { begun, ended } = times(n)
          const closeOut = { startedAt: at(begun).toISOString(), finishedAt: at(ended).toISOString() }
          return {
            companyId,
            id: newId(),
            jobId,
            crewDayId,
            state: 'closed',
            outcome: 'done',
            startsAt: at(480 + n * 60),
            endsAt: at(520 + n * 60),
            closedAt: at(ended),
            closeOut,
          }
        }),
      }),
    )
  }
}

test('drives between visits that were begun and ended on the road are learned from', async () => {
  await driven(6, (n) => ({ begun: 540 + n * 65, ended: 580 + n * 65 }))
  const { pace, used, days } = await learnPace(firm, ZONE)
  expect({ used, days }).toEqual({ used: 36, days: 6 })
  // 25 minutes where 16 are usual; 36 of its own against 12 usual ones: somewhat below 25 ÷ 16.
  expect(pace?.factor).toBeGreaterThan(1.25)
  expect(pace?.factor).toBeLessThan(1.5)
})

test('visits closed one after the other at a table in the evening teach nothing, on however many days', async () => {
  await driven(8, (n) => ({ begun: 1140 + n * 2, ended: 1141 + n * 2 }))
  expect(await learnPace(firm, ZONE)).toEqual({ pace: null, used: 0, days: 0, setAside: 0 })
})

test('nor do visits that were begun in the day and all ended in the evening', async () => {
  await driven(5, (n) => ({ begun: 480 + n * 65, ended: 1140 + n }))
  expect((await learnPace(firm, ZONE)).used).toBe(0)
})
