import { mkdtemp, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { monitorEventLoopDelay } from 'node:perf_hooks'
import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { HOSTILE_FILES } from '../../../tests/support/hostile-files.ts'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { storeUpload } from './store-upload.ts'
import { type Firm, makeFirm } from './test-import.ts'

let firm: Firm
let folder: string

beforeAll(async () => {
  await testDatabase()
  firm = await makeFirm()
  // What is loaded and compiled once is not the file's doing.
  folder = await mkdtemp(path.join(os.tmpdir(), 'uploads-'))
  const fair = path.join(folder, 'fair')
  await writeFile(fair, 'Name,Street\nAnn Poe,1 Elm St\n')
  await storeUpload(await makeFirm(), { fileName: 'fair.csv', file: fair })
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
  const file = path.join(folder, 'list')
  await writeFile(file, make())
  let told: unknown
  const waited = await longestWait(async () => {
    await storeUpload(firm, { fileName: 'list', file }).catch((error: unknown) => {
      told = error
    })
  })
  expect(told).toMatchObject({ code: 'invalid', message: expect.stringMatching(words) })
  expect(String(told)).toMatch(/Nothing was imported\.$/)
  // Read in this process, each of these files held up everything for seconds to minutes.
  expect(waited).toBeLessThan(1000)
  expect(await inCompany(firm, (tx) => tx.importBatch.count({ where: { companyId: firm.companyId } }))).toBe(0)
})
