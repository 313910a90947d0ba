import { closeClients } from '@almanac/database/client'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { applyImport } from './apply-import.ts'
import { mappingOf } from './batch-mapping.ts'
import { checkImport } from './check-import.ts'
import { queueImport } from './queue-import.ts'
import { addRow, emptyReading, readOneRow } from './read-rows.ts'
import { readRowsApart } from './read-rows-apart.ts'
import { showRows } from './show-rows.ts'
import { batchOf, type Firm, makeFirm, rowsOf, upload as send } from './test-import.ts'

beforeAll(async () => {
  await testDatabase()
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

async function upload(firm: Firm, list: string) {
  const batchId = await send(firm, list)
  const { header, mapping, version } = await batchOf(firm, batchId)
  const columns = mapping.columns.map(({ header: _h, confidence: _c, reason: _r, ask: _a, examples: _e, ...choice }) => choice)
  const check = () => checkImport(firm, { commandId: newId(), batchId, version, columns, listRightOn: null, supplies: [] })
  return { batchId, mapping: mappingOf(header, columns), check }
}

/** The longest that this thread worked without a breath, in ms of its own processor time: others on a busy machine make it no longer. */
async function longestStretch(work: () => Promise<unknown>): Promise<number> {
  let longest = 0
  let since = process.threadCpuUsage()
  const breathe = () => {
    const { user, system } = process.threadCpuUsage(since)
    longest = Math.max(longest, (user + system) / 1000)
    since = process.threadCpuUsage()
  }
  const clock = setInterval(breathe, 5)
  await work()
  breathe()
  clearInterval(clock)
  return longest
}

const HEADER = 'Name,Street,Tank,Installed,Hardness,Supply,Disinfectant,Notes\n'
const ORDINARY = `${HEADER}Ann Poe,1 Elm St,10x54,2012,18 gpg,Town,chlorine,rebed 2016
Bo Dow,2 Elm St,twin 14x65,banana,18 gpg,Town,chlorine,
Ann Poe,1 Elm St,12x52,2012,20 gpg,Town,chlorine,rebed quoted 2019
Cy Roe,,48000 grain,March 2015,310 mg/L,well,none,"gate code 2016; new resin 3/2018"
`

const OPTIONS = { today: '2026-05-04', display: { locale: 'en-US' } }

describe('a list is checked in a process of its own', () => {
  test('and an ordinary one is understood as in this process', async () => {
    const firm = await makeFirm()
    const { batchId, mapping, check } = await upload(firm, ORDINARY)
    const rows = await rowsOf(firm, batchId)
    const here = emptyReading()
    for (const row of rows) addRow(here, readOneRow(row, mapping, OPTIONS))
    expect([here.wants.rowKeys.size, here.problems.size, here.wants.supplies.size]).toEqual([4, 1, 2])
    expect(await readRowsApart(firm.companyId, { rows, mapping, options: OPTIONS })).toEqual(here)
    // By hand: "banana" is no date, so that cell is left empty; the third row makes nothing of its own, it speaks of the first one's softener.
    expect(await check()).toMatchObject({ problem: 0, leftEmpty: 1, decide: 0 })
    expect((await rowsOf(firm, batchId)).map((row) => row.status)).toEqual(['created', 'created', 'unchanged', 'created'])
  })

  test('so that notes made to hold it up hold up nobody else, nor does a page of their rows', { timeout: 240_000 }, async () => {
    const firm = await makeFirm()
    const notes = 'rebed 2016 '.repeat(363)
    const list = Array.from({ length: 1500 }, (_, at) => `Ann Poe ${at},${at} Elm St,10x54,2012,18 gpg,Town,chlorine,${notes}\n`)
    const { batchId, check } = await upload(firm, HEADER + list.join(''))
    let counts: unknown
    const checked = await longestStretch(async () => {
      counts = await check()
    })
    expect(counts).toMatchObject({ created: 1500, problem: 0 })
    const { version } = await batchOf(firm, batchId)
    const shown = await longestStretch(() => showRows(firm, { batchId, only: 'all', limit: 200 }))
    // With the rows read in this process: 1,060; with no pause between the rows shown: 204.
    expect(checked).toBeLessThan(500)
    expect(shown).toBeLessThan(100)
    await queueImport(firm, { commandId: newId(), batchId, version })
    const applied = await longestStretch(() => applyImport({ companyId: firm.companyId, batchId }))
    // With the rows read in the worker's own process: 507.
    expect(applied).toBeLessThan(300)
  })

  test('which is stopped with a sentence when it takes too much, and nothing was checked', async () => {
    const firm = await makeFirm()
    const { batchId, mapping } = await upload(firm, ORDINARY)
    const input = { rows: await rowsOf(firm, batchId), mapping, options: OPTIONS }
    await expect(readRowsApart(firm.companyId, input, { seconds: 0.01 })).rejects.toMatchObject({
      code: 'invalid',
      message: expect.stringMatching(/too much time or memory to check\. It’s kept as it came, and nothing was imported\./),
    })
  })

  test('one list of a firm at a time, with one waiting; a third is told to try again', async () => {
    const firm = await makeFirm()
    const { batchId, mapping } = await upload(firm, ORDINARY)
    const input = { rows: await rowsOf(firm, batchId), mapping, options: OPTIONS }
    const told = await Promise.allSettled([1, 2, 3].map(() => readRowsApart(firm.companyId, input)))
    expect(told.map((one) => one.status)).toEqual(['fulfilled', 'fulfilled', 'rejected'])
    expect(told[2]).toMatchObject({ reason: { code: 'rate-limited', message: expect.stringMatching(/Try again in a minute/) } })
  })
})
