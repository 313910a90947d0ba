import { closeClients } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readBedPage } from '@almanac/database/read/bed-page'
import { readCallBacks, readCallSite, readCalls } from '@almanac/database/read/calls'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { readCompanyRecords } from '../forecasts/company-records.ts'
import { proposeIn } from '../jobs/propose-job.ts'
import { DAY, type Firm, makeBed, makeFirm } from '../jobs/test-firm.ts'
import { recordCall } from './record-call.ts'
import { settleCallBack } from './settle-call-back.ts'

let firm: Firm
let place: Awaited<ReturnType<typeof makeBed>>

const names = () => 'Dana'
const plain = {
  ...{ siteId: null, softenerId: null, callerName: '', callerPhone: '', sees: null, words: '', advised: '' },
  ...{ stillSoft: false, hardSinceDay: null, follows: { what: 'nothing' as const } },
}
type Said = Partial<Parameters<typeof recordCall>[1]>
const call = (said: Said) => recordCall(firm, { commandId: newId(), ...plain, ...said }, proposeIn)
const job = (id: string | null) =>
  inCompany(firm, (tx) => tx.job.findUniqueOrThrow({ where: { companyId_id: { companyId: firm.companyId, id: id ?? '' } } }))
const bed = () =>
  inCompany(firm, (tx) => tx.bed.findUniqueOrThrow({ where: { companyId_id: { companyId: firm.companyId, id: place.bedId } } }))

beforeAll(() => setClock(() => new Date(`${DAY}T16:00:00Z`)))
beforeEach(async () => {
  firm = await makeFirm()
  place = await makeBed(firm)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

describe('a call', () => {
  test('from a site ends as a job in the same step, with what they see in its notes', async () => {
    const { jobId } = await call({
      ...{ siteId: place.siteId, sees: 'beads', words: 'in the shower head', follows: { what: 'visit', visit: 'emergency' } },
    })
    expect(await job(jobId)).toMatchObject({
      ...{ kind: 'emergency', state: 'proposed', softenerId: place.softenerId, notes: 'in the shower head' },
      askedFor: { by: 'call', quote: false, rebedDay: null, sees: 'beads', hard: null },
      dueLatest: dateOf(DAY),
    })
    const { calls } = await readCallSite(firm, place.siteId, names)
    expect(calls).toMatchObject([{ takenBy: 'Dana', sees: 'beads', follows: 'visit', job: { id: jobId, kind: 'emergency' } }])
  })

  test('sent twice is kept once', async () => {
    const input = { commandId: newId(), ...plain, siteId: place.siteId, follows: { what: 'materials' as const } }
    expect(await recordCall(firm, input, proposeIn)).toEqual(await recordCall(firm, input, proposeIn))
    expect((await readCalls(firm, { limit: 9 }, names)).rows).toHaveLength(1)
  })

  test('from somebody on no record is kept with name and number; no customer, site or softener is made up', async () => {
    const counts = () =>
      inCompany(firm, async (tx) => {
        const where = { companyId: firm.companyId }
        return [
          await tx.customer.count({ where }),
          await tx.site.count({ where }),
          await tx.softener.count({ where }),
          await tx.job.count({ where }),
        ]
      })
    const before = await counts()
    await call({ callerName: 'Ottilie Marsh', callerPhone: '555 0142', sees: 'hard-water', follows: { what: 'quote', day: '2026-12-04' } })
    expect(await counts()).toEqual(before)
    expect(await readCallBacks(firm)).toMatchObject([
      { cause: 'quote', dueDay: '2026-12-04', callerName: 'Ottilie Marsh', callerPhone: '555 0142', siteId: null, whom: null },
    ])
    await expect(call({ callerName: 'Ottilie Marsh', follows: { what: 'visit', visit: 'repair' } })).rejects.toThrow(/needs a site/)
    await expect(call({})).rejects.toThrow(/needs a caller/)
  })

  test('that says "still soft" counts as seen working that day, and never moves the day back', async () => {
    await call({ siteId: place.siteId, stillSoft: true })
    expect([dayOf((await bed()).lastSeenDay), (await bed()).factSources]).toEqual([DAY, { lastSeenDay: `said on a call, ${DAY}` }])
    await inCompany(firm, (tx) =>
      tx.bed.update({
        where: { companyId_id: { companyId: firm.companyId, id: place.bedId } },
        data: { lastSeenDay: dateOf('2026-12-20') },
      }),
    )
    await call({ siteId: place.siteId, stillSoft: true })
    expect(dayOf((await bed()).lastSeenDay)).toBe('2026-12-20')
  })

  test('of hard water keeps since when, and is no sighting', async () => {
    await call({ siteId: place.siteId, hardSinceDay: '2026-04-01', follows: { what: 'visit', visit: 'repair' } })
    expect((await bed()).lastSeenDay).toBeNull()
    expect((await readCallSite(firm, place.siteId, names)).calls[0]).toMatchObject({ hardSinceDay: '2026-04-01' })
    await expect(call({ siteId: place.siteId, stillSoft: true, hardSinceDay: '2026-04-01' })).rejects.toThrow(/Choose one/)
    await expect(call({ siteId: place.siteId, hardSinceDay: '2026-12-04' })).rejects.toThrow(/future/)
  })

  test('of hard water “since spring” keeps the span, the words and the bed, says so on its page, and dates its failure when it comes out', async () => {
    const since = (hardSince: string) => call({ siteId: place.siteId, hardSince, follows: { what: 'visit', visit: 'repair' } })
    const { jobId } = await since('since spring')
    // The clock stands at 2026-12-03: the spring of that year, March to May, as the list's own dates have it.
    expect((await readCallSite(firm, place.siteId, names)).calls[0]).toMatchObject({
      hardSinceDay: '2026-03-01',
      hardSinceLatest: '2026-05-31',
    })
    expect((await readBedPage(firm, place.bedId)).heardHard).toMatchObject({ earliest: '2026-03-01', latest: '2026-05-31' })
    expect((await job(jobId)).askedFor).toMatchObject({ by: 'call', hard: { earliest: '2026-03-01' } })
    await inCompany(firm, (tx) =>
      tx.bed.update({
        where: { companyId_id: { companyId: firm.companyId, id: place.bedId } },
        data: {
          ...{ beganEarliest: dateOf('2014-05-01'), beganLatest: dateOf('2014-05-01'), lastSeenDay: dateOf('2025-02-01') },
          ...{ endedEarliest: dateOf('2026-12-03'), endedLatest: dateOf('2026-12-03'), endCause: 'worn' },
        },
      }),
    )
    const ended = async () => (await readCompanyRecords(firm.companyId)).records.map((one) => one.end)
    expect(await ended()).toEqual([
      { earliestDay: '2026-03-01', latestDay: '2026-05-31', outFromDay: '2026-05-31', cause: 'failed', found: 'call' },
    ])
    // Seen working after: it was something else.
    await inCompany(firm, (tx) => tx.bed.updateMany({ where: { companyId: firm.companyId }, data: { lastSeenDay: dateOf('2026-08-01') } }))
    expect(await ended()).toMatchObject([{ earliestDay: '2026-08-01', latestDay: '2026-12-03', found: null }])
    await expect(since('the other day')).rejects.toThrow(/Hard since: .*Nothing was saved/)
    await expect(since('2031')).rejects.toThrow(/future/)
  })

  test('complains of the last rebed done there, and of none where there was none', async () => {
    const complain = () => call({ siteId: place.siteId, follows: { what: 'visit', visit: 'complaint' } })
    await expect(complain()).rejects.toThrow(/No rebed/)
    const visitId = await inCompany(firm, async (tx) => {
      const { companyId } = firm
      const [jobId, crewDayId, id] = [newId(), newId(), newId()]
      const span = { startsAt: new Date('2026-03-12T15:00:00Z'), endsAt: new Date('2026-03-12T17:00:00Z') }
      await tx.job.create({
        data: { companyId, id: jobId, siteId: place.siteId, kind: 'rebed', state: 'closed', minutes: 120, crewSize: 2 },
      })
      await tx.crewDay.create({ data: { companyId, id: crewDayId, day: dateOf('2026-03-12'), name: 'Pair', ...span } })
      await tx.visit.create({ data: { companyId, id, jobId, crewDayId, state: 'closed', outcome: 'done', ...span } })
      return id
    })
    const { jobId, callId } = await complain()
    expect(await job(jobId)).toMatchObject({ kind: 'warranty-return', notes: null, askedFor: { by: 'call', rebedDay: '2026-03-12' } })
    const kept = await inCompany(firm, (tx) =>
      tx.phoneCall.findUnique({ where: { companyId_id: { companyId: firm.companyId, id: callId } } }),
    )
    expect(kept?.visitId).toBe(visitId)
  })

  test('about another company’s site is about none', async () => {
    const other = await makeBed(await makeFirm())
    await expect(call({ siteId: other.siteId })).rejects.toMatchObject({ code: 'not-found' })
    await expect(call({ siteId: place.siteId, softenerId: other.softenerId })).rejects.toMatchObject({ code: 'not-found' })
  })
})

describe('a call-back', () => {
  const owed = async () => (await readCallBacks(firm))[0] ?? expect.unreachable()

  test('comes due first, stays for tomorrow where nobody answered, and goes when it is done', async () => {
    await call({ siteId: place.siteId, follows: { what: 'call-back', day: '2026-12-09' } })
    await call({ siteId: place.siteId, words: 'ask for the salt', follows: { what: 'call-back', day: DAY } })
    expect((await readCallBacks(firm)).map((one) => one.dueDay)).toEqual([DAY, '2026-12-09'])
    const first = await owed()
    const settle = (outcome: 'talked' | 'no-answer', version: number) =>
      settleCallBack(firm, { commandId: newId(), callBackId: first.id, version, outcome, note: '' })
    expect(await settle('no-answer', 1)).toMatchObject({ state: 'open', dueDay: '2026-12-04' })
    expect(await owed()).toMatchObject({ id: first.id, tried: true, dueDay: '2026-12-04', words: 'ask for the salt' })
    await expect(settle('talked', 1)).rejects.toMatchObject({ code: 'version-conflict' })
    await settle('talked', 2)
    expect((await readCallBacks(firm)).map((one) => one.dueDay)).toEqual(['2026-12-09'])
    await expect(settle('talked', 3)).rejects.toThrow(/already/)
  })
})

test('whom to call about a site is read with everything that decides it: another site’s contact, one that left, a refusal, a second number', async () => {
  const own = { companyId: firm.companyId }
  const [customerId, elsewhere] = [newId(), (await makeBed(firm, 'Elm Street 9')).siteId]
  const contact = (data: { role: string; name: string; phone?: string; otherPhone?: string; siteId?: string; archivedAt?: Date }) => ({
    ...{ ...own, id: newId(), customerId },
    ...data,
  })
  const refused = contact({ role: 'payer', name: 'Ann', phone: '555 01' })
  await inCompany(firm, async (tx) => {
    await tx.customer.create({ data: { ...own, id: customerId, name: 'Vance' } })
    await tx.tenure.create({ data: { ...own, id: newId(), siteId: place.siteId, customerId } })
    await tx.contact.createMany({
      data: [
        refused,
        contact({ role: 'payer', name: 'Gone', phone: '555 02', archivedAt: new Date() }),
        contact({ role: 'payer', name: 'Elsewhere', phone: '555 03', siteId: elsewhere }),
        contact({ role: 'key-holder', name: 'Key', otherPhone: '555 04; 555 05', siteId: place.siteId }),
        contact({ role: 'occupier', name: 'Silent' }),
      ],
    })
    await tx.consent.create({
      data: { ...own, id: newId(), contactId: refused.id, channel: 'phone', granted: false, source: 'call', sinceDay: dateOf(DAY) },
    })
  })
  const { whom } = await readCallSite(firm, place.siteId, names)
  expect(whom).toEqual({
    customerName: 'Vance',
    called: { name: 'Key', role: 'key-holder', phone: '555 04', otherPhones: ['555 05'], mayCall: null },
  })
})
