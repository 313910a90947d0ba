import http from 'node:http'
import type { AddressInfo } from 'node:net'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { forgetConfig } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bookVisit } from './book-visit.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { sheetsOfDay } from './sheets-of-day.ts'
import { DAY, type Firm, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'
import { forgetServerLegs } from './travel-server.ts'

const id = () => ({ commandId: newId() })
const YARD = { latitude: 41.72, longitude: -88.44 }
let firm: Firm
let crewDayId: string

/** A server on loopback that answers as told, and how often it was asked. */
async function roads(answer: (pairs: number) => { status: number; body: unknown }) {
  let asked = 0
  const server = http.createServer((request, response) => {
    asked++
    const places = (request.url ?? '').split('/').at(-1)?.split('?')[0]?.split(';').length ?? 0
    const { status, body } = answer(places / 2)
    response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body))
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  process.env.TRAVEL_TABLE_URL = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  forgetConfig()
  forgetServerLegs()
  return { asked: () => asked, close: () => new Promise((done) => server.close(done)) }
}

async function visitAt(label: string, at: string, place: { latitude: number; longitude: number } | null, postcode?: string) {
  const { siteId, bedId } = await makeBed(firm, label)
  await inCompany(firm, (tx) =>
    tx.site.update({ where: { companyId_id: { companyId: firm.companyId, id: siteId } }, data: { ...(place ?? {}), postcode } }),
  )
  const { jobId } = await proposeJob(firm, { ...id(), siteId, bedId, kind: 'inspection' })
  await bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId, at, confirmed: [] })
}
const drives = async () => (await sheetsOfDay(firm, DAY)).sheets[0]?.drives ?? []

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  delete process.env.TRAVEL_TABLE_URL
  forgetConfig()
  forgetServerLegs()
  firm = await makeFirm()
  const yard = { yardLatitude: YARD.latitude, yardLongitude: YARD.longitude }
  await inCompany(firm, (tx) => tx.companySettings.create({ data: { companyId: firm.companyId, id: newId(), ...yard } }))
  const colleagueIds = [await makeColleague(firm, 'Ruth Ames')]
  const crew = { name: 'Ruth', colleagueIds, vehicleId: await makeVehicle(firm), from: '08:00', until: '17:00' }
  crewDayId = (await openDaySheet(firm, { ...id(), ...crew, day: DAY })).crewDayId
})
afterAll(async () => {
  delete process.env.TRAVEL_TABLE_URL
  forgetConfig()
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('the drives of a sheet', () => {
  test('go from the yard to each visit and home, estimated from coordinates', async () => {
    // A tenth of a degree north is 6.909 miles straight; the same way back.
    await visitAt('North farm', '10:00', { latitude: 41.82, longitude: -88.44 })
    const [out, home] = await drives()
    expect(out).toMatchObject({ basis: 'estimated' })
    // Road ÷ straight lies between 1.2 and 1.3, speed between 25 and 45 mph.
    expect(out?.miles).toBeGreaterThan(6.9 * 1.2)
    expect(out?.miles).toBeLessThan(6.92 * 1.3)
    expect(out?.minutes).toBeGreaterThan((60 * 6.9 * 1.2) / 45)
    expect(home?.miles).toBe(out?.miles)
  })
  test('are unknown to and from a site whose place nobody wrote down, and a postcode places a site roughly', async () => {
    await visitAt('Nowhere', '10:00', null)
    await visitAt('By postcode', '13:00', null, '60502')
    const [out, between, home] = await drives()
    expect([out?.basis, between?.basis, home?.basis]).toEqual(['unknown', 'unknown', 'estimated'])
    expect(out).toEqual({ basis: 'unknown', minutes: null, miles: null })
    const places = (await sheetsOfDay(firm, DAY)).sheets[0]?.visits.map((visit) => visit.place?.about)
    expect(places).toEqual([undefined, true])
  })
  test('of a sheet without visits are none', async () => {
    expect(await drives()).toEqual([])
  })
})

describe('a travel server', () => {
  test('is believed where it knows the road, and asked once', async () => {
    const table = (n: number) => Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => (i === j ? 0 : 1500)))
    const server = await roads((n) => ({ status: 200, body: { code: 'Ok', durations: table(n), distances: table(n) } }))
    await visitAt('North farm', '10:00', { latitude: 41.82, longitude: -88.44 })
    // Left at eight, in a rush hour, which takes a fifth longer; home at noon or so, which does not.
    expect(await drives()).toMatchObject([
      { basis: 'server', minutes: 30, miles: 0.9 },
      { basis: 'server', minutes: 25, miles: 0.9 },
    ])
    await drives()
    expect(server.asked()).toBe(1)
    await server.close()
  })
  test.each([
    ['an error', { status: 500, body: { code: 'InternalError' } }],
    ['nonsense', { status: 200, body: 'hello' }],
    ['drive times for a different number of places', { status: 200, body: { code: 'Ok', durations: [[0]] } }],
  ])('that answers %s is left alone for a while, and drives are estimated', async (_, answer) => {
    const server = await roads(() => answer)
    await visitAt('North farm', '10:00', { latitude: 41.82, longitude: -88.44 })
    expect((await drives()).map((one) => one.basis)).toEqual(['estimated', 'estimated'])
    await drives()
    expect(server.asked()).toBe(1)
    await server.close()
  })
})
