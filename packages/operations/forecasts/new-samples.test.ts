import { closeClients } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import type pg from 'pg'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { addManyBeds } from '../../../tests/support/many-beds.ts'
import { NOW } from '../../../tests/support/records.ts'
import { type FirmRecords, inspector, makeFirmRecords } from '../../../tests/support/two-firms.ts'
import { endAndBeginBed } from '../shared/end-and-begin-bed.ts'
import { recordFindings } from '../shared/record-findings.ts'
import { explainBed } from './explain-bed.ts'
import { refitCompany, refreshBeds, refreshCompany } from './refresh-forecasts.ts'

const DAY = NOW.slice(0, 10)
type Beads = 'firm' | 'some-soft' | 'mushy' | null

let db: pg.Client
let firm: FirmRecords
/** Beds in service on the firm's supply, and one on another. */
let beds: string[]
let elsewhere: string

/** A young bed at a site of another supply. */
async function bedElsewhere(): Promise<string> {
  const [supply, site, softener, tank, bed] = [newId(), newId(), newId(), newId(), newId()]
  const own = { companyId: firm.companyId }
  await inCompany(firm, async (tx) => {
    await tx.waterSupply.create({ data: { ...own, id: supply, name: 'Quillfield town', kind: 'town' } })
    await tx.site.create({ data: { ...own, id: site, label: 'Quill Street 2', waterSupplyId: supply } })
    await tx.softener.create({ data: { ...own, id: softener, siteId: site, label: 'House softener' } })
    await tx.tank.create({ data: { ...own, id: tank, softenerId: softener, diameterIn: 10, heightIn: 54 } })
    const began = { beganEarliest: dateOf('2019-03-01'), beganLatest: dateOf('2019-03-01'), lastSeenDay: dateOf('2026-06-01') }
    await tx.bed.create({ data: { ...own, id: bed, tankId: tank, volumeFt3: 1.5, resinKind: 'gel-8', ...began } })
  })
  return bed
}

/** A close-out as a visit makes it: the sample graded, the bed ended, in one transaction. */
const closeOut = (bedId: string, cause: 'worn' | 'removed-for-convenience', beads: Beads) =>
  runCommand(firm, 'test.close-out', { commandId: newId(), bedId }, async (tx, command) => {
    const { tankId } = await tx.bed.findUniqueOrThrow({ where: { companyId_id: { companyId: firm.companyId, id: bedId } } })
    const place = { visitId: firm.rebedVisitId, siteId: firm.siteId, softenerId: null, bedId, day: DAY }
    await recordFindings(tx, command, place, [], beads)
    return endAndBeginBed(tx, command, { tankId, endedEarliest: DAY, endedLatest: DAY, cause, visitId: null, newBed: null })
  })

/** Does the queued work of a kind, as the worker would, and answers how many tasks there were. */
async function work<Q extends 'forecast-beds' | 'forecast-company'>(queue: Q, run: (payload: TaskPayloads[Q]) => Promise<void>) {
  const sql = `delete from queue.job where name = $1 and data->>'companyId' = $2 returning data`
  const { rows } = await db.query<{ data: TaskPayloads[Q] }>(sql, [queue, firm.companyId])
  for (const { data } of rows) await run(data)
  return rows.length
}
const dueOf = async (bedId: string) =>
  Number((await inCompany(firm, (tx) => tx.bedForecast.findFirst({ where: { companyId: firm.companyId, bedId } })))?.due50Day)

beforeAll(async () => {
  db = await inspector()
  setClock(() => new Date(NOW))
})
beforeEach(async () => {
  firm = await makeFirmRecords(db)
  beds = (await addManyBeds(firm, 20, 8)).inService
  elsewhere = await bedElsewhere()
  await refitCompany({ companyId: firm.companyId, cause: 'nightly' })
  await db.query(`delete from queue.job where data->>'companyId' = $1`, [firm.companyId])
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
  await db.end()
})

describe('the graded sample of a bed taken out', () => {
  test.each([
    ['mushy and young', 'removed-for-convenience', 'mushy', -1],
    ['mushy and young, worn out', 'worn', 'mushy', -1],
    ['firm', 'removed-for-convenience', 'firm', 1],
  ] as const)('%s moves the beds of its supply before any refit, and no others', async (_what, cause, beads, sign) => {
    const [taken = '', neighbour = ''] = [beds[3], beds[9]]
    const before = [await dueOf(neighbour), await dueOf(elsewhere)]
    await closeOut(taken, cause, beads)
    expect(await work('forecast-beds', refreshBeds)).toBe(1)
    expect(await work('forecast-company', refreshCompany)).toBe(1)
    expect(Math.sign((await dueOf(neighbour)) - (before[0] ?? 0))).toBe(sign)
    expect(await dueOf(elsewhere)).toBe(before[1])
    expect(await inCompany(firm, (tx) => tx.forecastFit.count({ where: { version: { not: 'fit-1' } } }))).toBe(1)
    const why = await explainBed(firm, neighbour, { locale: 'en-US' })
    expect(why.ok && why.value.due50Day).toBe(new Date(await dueOf(neighbour)).toISOString().slice(0, 10))
  })

  test('not graded moves nobody at once', async () => {
    const before = await dueOf(beds[9] ?? '')
    await closeOut(beds[3] ?? '', 'removed-for-convenience', null)
    await work('forecast-beds', refreshBeds)
    expect(await work('forecast-company', refreshCompany)).toBe(0)
    expect(await dueOf(beds[9] ?? '')).toBe(before)
  })

  test('is learned once: after the night’s refit it counts in the fit and no longer on top of it', async () => {
    await closeOut(beds[3] ?? '', 'removed-for-convenience', 'mushy')
    await work('forecast-beds', refreshBeds)
    await work('forecast-company', refreshCompany)
    const atOnce = await dueOf(beds[9] ?? '')
    await refitCompany({ companyId: firm.companyId, cause: 'nightly' })
    const refitted = await dueOf(beds[9] ?? '')
    const runs = await inCompany(firm, (tx) =>
      tx.forecastRun.findMany({ where: { id: { not: firm.runId } }, orderBy: { id: 'asc' }, select: { parametersVersion: true } }),
    )
    expect(runs.map((run) => run.parametersVersion.endsWith('+samples'))).toEqual([false, true, true, false])
    // The same evidence by either way: what differs is the life of the bed taken out, which only a fit learns from.
    expect(Math.abs(refitted - atOnce) / 86_400_000).toBeLessThan(60)
  })
})
