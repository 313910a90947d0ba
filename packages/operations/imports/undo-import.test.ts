import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readImport } from '@almanac/database/read/import-batches'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { batchOf, bringIn, type Firm, makeFirm, stateOf } from './test-import.ts'
import { previewUndoImport, undoImport } from './undo-import.ts'

let firm: Firm
const HEADER = 'Customer no,Name,Phone,Street,Town,Zip,Tank,Installed,Hardness (gpg),Water supply'
const ANNA = '17,Anna Böhm,555-010-4471,14 Orchard Ln,Larkmoor,84001,10x54,2009,18,Larkmoor town'
const BELL = '18,Bell House,555-010-4472,3 Mill Rd,Larkmoor,84001,9x48,2015,22,Larkmoor town'
const file = (...rows: string[]) => [HEADER, ...rows].join('\n')

async function undo(who: Firm, batchId: string) {
  const { version } = await batchOf(firm, batchId)
  return undoImport(who, { commandId: newId(), batchId, version })
}
const live = <R extends { archivedAt: Date | null }>(rows: R[]) => rows.filter((row) => row.archivedAt === null)

beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  firm = await makeFirm()
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

describe('undoing an import', () => {
  test('puts away all it made, with its search words, and lets the file come again', async () => {
    const { batchId } = await bringIn(firm, file(ANNA, BELL))
    expect(await undo(firm, batchId)).toMatchObject({ archived: 6, restored: 0, kept: 0 })
    const state = await stateOf(firm)
    const { customers, contacts, sites, softeners, tanks, beds, supplies } = state
    const made: { archivedAt: Date | null }[] = [...customers, ...contacts, ...sites, ...softeners, ...tanks, ...beds, ...supplies]
    expect(made.filter((row) => row.archivedAt === null)).toEqual([])
    expect(state.tests.every((one) => one.withdrawnAt !== null)).toBe(true)
    expect(state.tokens).toEqual([])
    expect(await batchOf(firm, batchId)).toMatchObject({ state: 'undone' })
    expect((await bringIn(firm, file(ANNA, BELL))).done).toMatchObject({ created: 2, customers: 2 })
    expect(live((await stateOf(firm)).supplies)).toHaveLength(1)
  })

  test('leaves what was edited or has a job since, and says why', async () => {
    const { batchId } = await bringIn(firm, file(ANNA, BELL))
    const { companyId } = firm
    const before = await stateOf(firm)
    const bell = before.sites.find((site) => site.street === '3 Mill Rd')
    await inCompany(firm, (tx) =>
      tx.job.create({
        data: { companyId, id: newId(), siteId: bell?.id ?? '', kind: 'annual-visit', state: 'proposed', minutes: 45, crewSize: 1 },
      }),
    )
    // Said before, with the same numbers and reasons, and nothing is changed by asking.
    const said = await previewUndoImport(firm, batchId)
    expect(await batchOf(firm, batchId)).toMatchObject({ state: 'applied' })
    const { version: _version, ...summary } = await undo(firm, batchId)
    expect(said).toEqual(summary)
    expect(summary).toMatchObject({ archived: 3, kept: 3 })
    expect(summary.keptExamples).toContainEqual({ kind: 'site', siteId: bell?.id, why: 'The site stays, because it has a job.' })
    const state = await stateOf(firm)
    expect(live(state.sites).map((site) => site.street)).toEqual(['3 Mill Rd'])
    expect(live(state.beds)).toHaveLength(1)
    expect(live(state.customers).map((one) => one.name)).toEqual(['Bell House'])
  })

  test('gives changed values back where they stand as it wrote them, and leaves later edits', async () => {
    await bringIn(firm, file(ANNA, BELL))
    const before = await stateOf(firm)
    const { batchId } = await bringIn(firm, file(ANNA.replace('10x54', '12x52'), BELL.replace('9x48', '10x44')))
    const { companyId } = firm
    await inCompany(firm, (tx) => tx.tank.updateMany({ where: { companyId, diameterIn: 10 }, data: { heightIn: 47, version: 3 } }))
    const summary = await undo(firm, batchId)
    expect(summary).toMatchObject({ archived: 0, kept: 1 })
    expect(summary.keptExamples[0]?.why).toBe('The tank size stays, because it was edited later.')
    const sizes = (await stateOf(firm)).tanks.map((tank) => [tank.diameterIn, tank.heightIn, tank.factSources])
    expect(sizes[0]).toEqual([10, 54, before.tanks[0]?.factSources])
    expect(sizes[1]?.slice(0, 2)).toEqual([10, 47])
  })

  test('takes the ground from a second import of the same file, which says so', async () => {
    const { batchId } = await bringIn(firm, file(ANNA, BELL))
    const second = await bringIn(firm, file(ANNA, BELL), 'again.csv')
    const third = await bringIn(firm, file(ANNA, ANNA.replaceAll('17,Anna', '19,Cora').replace('14 Orchard', '9 Elm')), 'third.csv')
    expect(second.done).toMatchObject({ unchanged: 2, created: 0 })
    await undo(firm, batchId)
    expect(await readImport(firm, second.batchId)).toMatchObject({ state: 'undone', gone: { rows: 2, fileName: 'list.csv' } })
    expect(await readImport(firm, third.batchId)).toMatchObject({ state: 'applied', gone: { rows: 1, fileName: 'list.csv' } })
    expect(await readImport(firm, batchId)).toMatchObject({ state: 'undone', gone: null })
    expect((await bringIn(firm, file(ANNA, BELL), 'again.csv')).done).toMatchObject({ created: 2 })
  })

  test('of another firm is not found, and nothing changes', async () => {
    const { batchId } = await bringIn(firm, file(ANNA))
    const before = await stateOf(firm)
    await expect(undo(await makeFirm(), batchId)).rejects.toMatchObject({ code: 'not-found' })
    expect(await stateOf(firm)).toEqual(before)
  })

  test('happens once', async () => {
    const { batchId } = await bringIn(firm, file(ANNA))
    await undo(firm, batchId)
    await expect(undo(firm, batchId)).rejects.toMatchObject({ code: 'conflict' })
  })
})
