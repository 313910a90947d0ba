import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { bookVisit } from './book-visit.ts'
import { openDaySheet } from './open-day-sheet.ts'
import { proposeJob } from './propose-job.ts'
import { sayUntil } from './say-until.ts'
import { sheetsOfDay } from './sheets-of-day.ts'
import { startVisit } from './start-visit.ts'
import { DAY, makeBed, makeColleague, makeFirm, makeVehicle } from './test-firm.ts'

const id = () => ({ commandId: newId() })

beforeAll(() => setClock(() => new Date(`${DAY}T17:10:00Z`))) // ten past ten in Phoenix
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

test('a start keeps its time, “until two” stands beside the visit, moves nobody, and is taken back', async () => {
  const firm = await makeFirm()
  const crew = { name: 'Ruth', colleagueIds: [await makeColleague(firm, 'Ruth')], vehicleId: await makeVehicle(firm) }
  const { crewDayId } = await openDaySheet(firm, { ...id(), ...crew, from: '08:00', until: '17:00', day: DAY })
  const book = async (label: string, at: string) => {
    const { siteId } = await makeBed(firm, label)
    const { jobId } = await proposeJob(firm, { ...id(), siteId, kind: 'annual-visit', minutes: 60 })
    return bookVisit(firm, { ...id(), jobId, jobVersion: 1, crewDayId, at, confirmed: ['past'] })
  }
  const { visitId } = await book('Weir Road 3', '10:00')
  await book('Next', '11:00')
  const visits = async () => (await sheetsOfDay(firm, DAY)).sheets[0]?.visits
  const started = await startVisit(firm, { ...id(), visitId, version: 1 })
  expect(await visits()).toMatchObject([{ state: 'under-way', startedAt: `${DAY}T17:10:00.000Z`, runningUntil: null }, {}])
  await expect(sayUntil(firm, { ...id(), visitId, version: started.version, until: '09:55' })).rejects.toThrow('before the visit begins')
  const said = await sayUntil(firm, { ...id(), visitId, version: started.version, until: '14:00' })
  const [first, second] = (await visits()) ?? []
  expect(first).toMatchObject({ runningUntil: `${DAY}T21:00:00.000Z`, endsAt: `${DAY}T18:00:00.000Z` })
  expect(second).toMatchObject({ startsAt: `${DAY}T18:00:00.000Z`, version: 1 })
  await expect(sayUntil(firm, { ...id(), visitId, version: 1, until: '15:00' })).rejects.toMatchObject({ code: 'version-conflict' })
  const after = await sayUntil(firm, { ...id(), visitId, version: said.version, until: null })
  expect(await visits()).toMatchObject([{ runningUntil: null }, {}])
  const where = { where: { companyId_id: { companyId: firm.companyId, id: visitId } } }
  await inCompany(firm, (tx) => tx.visit.update({ ...where, data: { state: 'called-off' } }))
  await expect(sayUntil(firm, { ...id(), visitId, version: after.version, until: '15:00' })).rejects.toThrow('isn’t over')
})
