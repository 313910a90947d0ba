import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readMergings } from '@almanac/database/read/mergings'
import { readSupplies } from '@almanac/database/read/water-supplies'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bringIn, type Firm, makeFirm, stateOf } from '../imports/test-import.ts'
import { addPeriod } from '../water/add-period.ts'
import { mergeSupplies } from './merge-supplies.ts'
import { previewUndo } from './preview-undo.ts'
import { undoMerging } from './undo-merging.ts'

/** One town's water under two names: two homes on the one, one on the other, which alone tells what is in it. */
const LIST = `No,Name,Street,Town,Tank,Installed,Water supply,Disinfectant
1,Ann Poe,1 Elm St,Lark,10x54,2012,Lark town,
2,Bo Dow,2 Elm St,Lark,9x48,2014,Lark town,
3,Cy Fay,3 Elm St,Lark,9x48,2016,Lark mains,chloramine
`

let firm: Firm
const command = () => ({ commandId: newId() })
const idOf = async (name: string) => (await stateOf(firm)).supplies.find((one) => one.name === name)?.id ?? expect.unreachable()
const suppliesOfSites = async () => {
  const { sites, supplies } = await stateOf(firm)
  return sites.map((site) => supplies.find((one) => one.id === site.waterSupplyId)?.name)
}
const shown = async () =>
  (await readSupplies(firm, { limit: 9 }, '2026-12-02')).rows.map((row) => [row.name, row.sites, row.present?.disinfectant])
const latest = async () => (await readMergings(firm, { limit: 9 })).rows[0] ?? expect.unreachable()
const plain = async () => {
  const { sites, supplies } = await stateOf(firm)
  return JSON.parse(JSON.stringify({ sites, supplies }, (key, value) => (key === 'version' ? undefined : value)))
}

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
  await bringIn(firm, LIST)
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

test('two names of one supply become one, with the homes of both and what is known of the water, and two again when it is undone', async () => {
  const before = await plain()
  const [keptId, goneId] = [await idOf('Lark town'), await idOf('Lark mains')]
  expect(await mergeSupplies(firm, { ...command(), keptId, goneId })).toMatchObject({ moved: 2 })
  expect(await suppliesOfSites()).toEqual(['Lark town', 'Lark town', 'Lark town'])
  expect(await shown()).toEqual([['Lark town', 3, 'chloramine']])
  const { id, version, ...row } = await latest()
  expect(row).toMatchObject({ kind: 'supply', gone: 'Lark mains', kept: 'Lark town', undone: false })
  // A list that uses the old name finds the one that was kept, and brings in nothing twice; a new home of it goes there too.
  expect((await bringIn(firm, LIST)).done).toMatchObject({ created: 0, updated: 0, unchanged: 3 })
  await bringIn(firm, `${LIST}4,Di Gow,4 Elm St,Lark,9x48,2018,Lark mains,\n`)
  expect(await suppliesOfSites()).toEqual(['Lark town', 'Lark town', 'Lark town', 'Lark town'])

  const said = await previewUndo(firm, id)
  expect(said.refused).toBeNull()
  expect(said.back).toEqual([
    { kind: 'site', count: 1, names: ['3 Elm St'] },
    { kind: 'supply_period', count: 1, names: [] },
  ])
  expect(said.stays).toEqual([{ kind: 'site', count: 1, names: ['4 Elm St'] }])
  await undoMerging(firm, { ...command(), mergingId: id, version })
  const after = await plain()
  expect({ ...after, sites: after.sites.slice(0, 3) }).toEqual(before)
  expect(await suppliesOfSites()).toEqual(['Lark town', 'Lark town', 'Lark mains', 'Lark town'])
})

test('what was noted of the kept supply stays its own history, and the other’s stays with the other', async () => {
  const [keptId, goneId] = [await idOf('Lark town'), await idOf('Lark mains')]
  const noted = { fromDay: null, disinfectant: 'free-chlorine' as const, source: 'notice', why: undefined }
  await addPeriod(firm, { ...command(), waterSupplyId: keptId, ...noted })
  await mergeSupplies(firm, { ...command(), keptId, goneId })
  expect(await shown()).toEqual([['Lark town', 3, 'free-chlorine']])
  const periods = (await stateOf(firm)).supplies.map((one) => [one.name, one.periods.length])
  expect(Object.fromEntries(periods)).toEqual({ 'Lark town': 1, 'Lark mains': 1 })
})

test('the beds of both are forecast again; and a supply that went, or another firm’s, is not found', async () => {
  const [keptId, goneId] = [await idOf('Lark town'), await idOf('Lark mains')]
  await mergeSupplies(firm, { ...command(), keptId, goneId })
  const tasks = await inCompany(
    firm,
    (tx) =>
      tx.$queryRaw<{ count: number }[]>`
        select count(*)::int as count from queue.job where name = 'forecast-company' and data->>'waterSupplyId' = ${keptId}`,
  )
  expect(tasks[0]?.count).toBe(1)
  await expect(mergeSupplies(firm, { ...command(), keptId, goneId })).rejects.toMatchObject({ code: 'not-found' })
  await expect(mergeSupplies(await makeFirm(), { ...command(), keptId, goneId })).rejects.toMatchObject({ code: 'not-found' })
  await expect(mergeSupplies(firm, { ...command(), keptId, goneId: keptId })).rejects.toThrow(/one and the same/)
})
