import type { CloseOutInput } from '@almanac/contract/visits'
import { closeClients } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { readJob } from '@almanac/database/read/job-page'
import { readVisit } from '@almanac/database/read/visit-page'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { readClosed, rebedRecord, ticked } from '../../../tests/support/close-out.ts'
import { DAY } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { closeOutVisit } from './close-out-visit.ts'

let db: pg.Client
let firm: FirmRecords

const rebed = (more: Partial<CloseOutInput>) => rebedRecord(firm, more)
const untouched = { oldBed: null, newBed: null, measurements: [], partsUsed: [] }
const close = (record: CloseOutInput) => closeOutVisit(firm, { commandId: newId(), record })
const read = () => readClosed(firm)
const tasks = async () =>
  (await db.query<{ name: string }>(`select name from queue.job where data->>'companyId' = $1 order by 1`, [firm.companyId])).rows

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(`${DAY}T20:00:00Z`))
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('a visit that ends otherwise', () => {
  test('made safe: the job needs another visit, with the reason; a bed not taken out goes on', async () => {
    const checks = ticked('left-in-bypass', 'customer-told')
    const answer = await close(rebed({ outcome: 'made-safe', ...untouched, checks, reason: 'the bypass leaks' }))
    expect(answer).toMatchObject({ jobState: 'proposed', endedBedId: null, newBedId: null })
    const { beds, job, visit } = await read()
    expect(job).toMatchObject({ state: 'proposed', stateReason: 'the bypass leaks', closedDay: null })
    expect(visit).toMatchObject({ state: 'closed', outcome: 'made-safe' })
    expect(beds).toMatchObject([{ endedLatest: null }])
  })

  test('made safe with the resin in bags: that bed is over, and none has begun', async () => {
    const checks = ticked('bypass-proven', 'pressure-zero', 'left-in-bypass', 'customer-told')
    const oldBed = { takenOut: true, endCause: 'beads-lost' as const, evidence: 'broken basket' }
    const answer = await close(rebed({ outcome: 'made-safe', ...untouched, oldBed, checks, reason: 'no basket on the van' }))
    expect(answer).toMatchObject({ jobState: 'proposed', endedBedId: firm.rebedBedId, newBedId: null })
    expect((await read()).beds).toMatchObject([{ endCause: 'beads-lost' }])
  })

  test('made safe with the new resin in the tank: the old bed is over, the new one lies there, and nobody returns to an empty tank', async () => {
    const checks = ticked('bypass-proven', 'pressure-zero', 'left-in-bypass', 'customer-told')
    const answer = await close(rebed({ outcome: 'made-safe', measurements: [], checks, reason: 'beads keep coming' }))
    expect(answer).toMatchObject({ jobState: 'proposed', endedBedId: firm.rebedBedId, newBedId: expect.any(String) })
    expect((await read()).beds).toMatchObject([{ endCause: 'worn' }, { endedLatest: null, volumeFt3: 1.5, tubeCutIn: 53.5 }])
    expect((await readVisit(firm, firm.rebedVisitId)).emptied).toBeNull()
  })

  test('another visit that the crew asks for is a job of its own, with what for; extra work and who else was there stand with the visit', async () => {
    const beside = {
      others: 'Bo',
      followUp: { kind: 'repair' as const, what: 'the bypass drips' },
      extra: { what: 'a new saddle valve', agreedWith: 'Mrs Vale' },
    }
    await close(rebed({ beside }))
    const made = await inCompany(firm, (tx) => tx.job.findFirst({ where: { companyId: firm.companyId, notes: 'the bypass drips' } }))
    expect(made).toMatchObject({ kind: 'repair', state: 'proposed' })
    expect((await read()).visit?.closeOut).toMatchObject({ beside })
    const page = await readJob(firm, firm.rebedJobId)
    expect(page.visits.find((one) => one.id === firm.rebedVisitId)).toMatchObject({ extra: beside.extra })
    expect(page.visits.find((one) => one.id === firm.rebedVisitId)?.people).toContain('Bo')
  })

  test('a rebed asked for where no bed is left is looked at first; extra work names with whom it was agreed', async () => {
    const checks = ticked('bypass-proven', 'pressure-zero', 'left-in-bypass', 'customer-told')
    const oldBed = { takenOut: true, endCause: 'beads-lost' as const, evidence: 'broken basket' }
    const asks = { others: '', followUp: { kind: 'rebed' as const, what: 'bring a basket' }, extra: null }
    const record = rebed({ outcome: 'made-safe', ...untouched, oldBed, checks, reason: 'no basket on the van', beside: asks })
    await expect(close({ ...record, beside: { ...asks, extra: { what: 'a valve', agreedWith: ' ' } } })).rejects.toThrow(/with whom/)
    await expect(close({ ...record, beside: { ...asks, followUp: { kind: 'repair', what: '' } } })).rejects.toThrow(
      /what the next visit is for/,
    )
    await close(record)
    const made = await inCompany(firm, (tx) => tx.job.findFirst({ where: { companyId: firm.companyId, notes: 'bring a basket' } }))
    expect(made).toMatchObject({ kind: 'inspection', bedId: null })
  })

  test('a tank exchanged: the old bed is over, the other tank’s bed has begun with a tube that nobody saw', async () => {
    await inCompany(firm, (tx) => tx.job.updateMany({ where: { id: firm.rebedJobId }, data: { kind: 'exchange' } }))
    const record = rebed({ jobKind: 'exchange' })
    const newBed = record.newBed && { ...record.newBed, tubeCutIn: null }
    await expect(close({ ...record, newBed, oldBed: null })).rejects.toThrow(/old bed/)
    const answer = await close({ ...record, newBed })
    expect(answer).toMatchObject({ jobState: 'closed', endedBedId: firm.rebedBedId, newBedId: expect.any(String) })
    expect((await read()).beds).toMatchObject([{ endCause: 'worn' }, { endedLatest: null, volumeFt3: 1.5, tubeCutIn: null }])
  })

  test('condemned at a place whose softener nobody has entered: closed all the same, with what was found', async () => {
    await inCompany(firm, (tx) =>
      tx.job.updateMany({ where: { id: firm.rebedJobId }, data: { kind: 'repair', softenerId: null, bedId: null } }),
    )
    const oldBed = { takenOut: false, endCause: 'tank-cracked' as const, evidence: 'crack at the base' }
    const checks = ticked('left-in-bypass', 'customer-told')
    const record = rebed({ jobKind: 'repair', outcome: 'condemned', ...untouched, oldBed, checks, reason: 'the tank is cracked' })
    expect(await close(record)).toMatchObject({ jobState: 'closed', endedBedId: null, newBedId: null })
    expect((await read()).visit?.closeOut).toMatchObject({ oldBed })
  })

  test.each([
    [
      'tank-condition',
      'cracked',
      /You answered: the tank is cracked\. The visit can’t end as “Done”\. Choose “Made safe .* or “Condemned”\./,
    ],
    ['drain-clear', 'beads', /beads keep coming\. .* Choose “Made safe/],
    ['brine-draw', 'none', /it draws no brine\. .* Choose “Made safe/],
    ['stop-case', 'crawl-space', /confined space\. .* Choose “Made safe/],
  ])('done with “%s: %s” among its answers is refused, and nothing is changed', async (stepId, note, sentence) => {
    const before = await read()
    const record = rebed({})
    const answered = { ...record, checks: [...record.checks, { stepId, confirmed: false, note }] }
    await expect(close(answered)).rejects.toMatchObject({ code: 'invalid', message: expect.stringMatching(sentence) })
    expect(await read()).toEqual(before)
  })

  test('left as found: nothing is known of the bed, and the job needs another visit', async () => {
    const checks = [...ticked('customer-told'), { stepId: 'stop-case', confirmed: false, note: 'lead-line' }]
    await close(rebed({ outcome: 'left-as-found', ...untouched, checks, reason: 'a lead line enters here' }))
    const { beds, job, visit } = await read()
    expect(beds).toMatchObject([{ endedLatest: null }])
    expect(job).toMatchObject({ state: 'proposed', stateReason: 'a lead line enters here' })
    expect(visit).toMatchObject({ state: 'closed', outcome: 'left-as-found' })
  })

  describe('an installation', () => {
    const checks = ticked('cap-out-counted', 'outlet-tested', 'leaks-checked', 'bypass-returned')
    const install = () => close(rebed({ jobKind: 'installation', checks, oldBed: null }))
    const asJob = (data: { softenerId?: null }) =>
      inCompany(firm, async (tx) => {
        await tx.job.updateMany({ where: { id: firm.rebedJobId }, data: { kind: 'installation', bedId: null, ...data } })
        await tx.bed.updateMany({
          where: { id: firm.rebedBedId },
          data: { endedEarliest: dateOf(DAY), endedLatest: dateOf(DAY), endCause: 'worn' },
        })
      })
    test('begins the bed of its softener', async () => {
      await asJob({})
      expect(await install()).toMatchObject({ jobState: 'closed', newBedId: expect.any(String) })
    })
    test('of a softener that nobody has entered closes all the same, with what went in', async () => {
      await asJob({ softenerId: null })
      expect(await install()).toMatchObject({ jobState: 'closed', newBedId: null })
      expect((await read()).visit?.closeOut).toMatchObject({ newBed: { resinKind: 'gel-10', volumeFt3: 1.5 } })
    })
  })

  test('no access: nothing is known of the bed, and the job needs another visit', async () => {
    const before = await read()
    await close(rebed({ outcome: 'no-access', ...untouched, checks: [], reason: 'nobody was at home' }))
    const after = await read()
    expect(after.beds).toEqual(before.beds)
    expect(after.job).toMatchObject({ state: 'proposed', stateReason: 'nobody was at home' })
  })

  test('the bed was not the fault: it counts as seen alive that day, and the job is closed', async () => {
    const checks = ticked('customer-told', 'bypass-returned')
    await close(rebed({ outcome: 'bed-not-at-fault', ...untouched, checks, reason: 'the salt had bridged' }))
    const { beds, job } = await read()
    expect(beds).toMatchObject([{ endedLatest: null, factSources: { lastSeenDay: `visit ${DAY}` } }])
    expect(dayOf(beds[0]?.lastSeenDay ?? null)).toBe(DAY)
    expect(job).toMatchObject({ state: 'closed' })
    expect(await tasks()).toContainEqual({ name: 'forecast-beds' })
  })

  test('a bed seen later already is not moved back', async () => {
    await inCompany(firm, (tx) => tx.bed.updateMany({ where: { id: firm.rebedBedId }, data: { lastSeenDay: dateOf(DAY) } }))
    const checks = ticked('customer-told', 'bypass-returned')
    await close(rebed({ outcome: 'bed-not-at-fault', ...untouched, checks, reason: 'the salt had bridged', workDay: '2026-12-01' }))
    expect(dayOf((await read()).beds[0]?.lastSeenDay ?? null)).toBe(DAY)
  })

  test('condemned: the bed ends without another, the softener is marked and the job closed', async () => {
    const checks = ticked('left-in-bypass', 'customer-told')
    const oldBed = { takenOut: false, endCause: 'tank-cracked' as const, evidence: 'crack at the base' }
    const answer = await close(rebed({ outcome: 'condemned', ...untouched, oldBed, checks, reason: 'the tank is cracked' }))
    expect(answer).toMatchObject({ jobState: 'closed', endedBedId: firm.rebedBedId, newBedId: null })
    const { beds, softener } = await read()
    expect(beds).toMatchObject([{ endCause: 'tank-cracked' }])
    expect(dayOf(softener?.condemnedDay ?? null)).toBe(DAY)
  })
})
