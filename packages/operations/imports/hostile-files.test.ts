import { monitorEventLoopDelay } from 'node:perf_hooks'
import { closeClients } from '@almanac/database/client'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { HOSTILE_FILES } from '../../../tests/support/hostile-files.ts'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { batchOf, type Firm, makeFirm, rowsOf, upload } from './test-import.ts'

let firm: Firm

beforeAll(async () => {
  await testDatabase()
  firm = await makeFirm()
  // What is loaded and compiled once is not the file's doing.
  await upload(await makeFirm(), 'Name,Street\nAnn Poe,1 Elm St\n')
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

/** The longest that anything else in this process waited while the work went on, in ms. */
async function longestWait(work: () => Promise<unknown>): Promise<number> {
  const delay = monitorEventLoopDelay({ resolution: 5 })
  delay.enable()
  await work()
  delay.disable()
  return delay.max / 1e6
}

test.each(HOSTILE_FILES)('%s is refused with a sentence, and holds up nobody', { timeout: 90_000 }, async (_name, make, words) => {
  const file = make()
  let batchId = ''
  const waited = await longestWait(async () => {
    batchId = await upload(firm, file, 'list')
  })
  expect(await batchOf(firm, batchId)).toMatchObject({ state: 'refused', failure: expect.stringMatching(words) })
  expect((await batchOf(firm, batchId)).failure).toMatch(/Nothing was imported\.$/)
  // Read in this process, each of these files held up everything for seconds to minutes.
  expect(waited).toBeLessThan(1000)
  expect(await rowsOf(firm, batchId)).toEqual([])
})
