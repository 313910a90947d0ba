import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readBedWater } from '@almanac/database/read/bed-water'
import { setClock } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { batchOf, bringIn, type Firm, makeFirm, stateOf } from './test-import.ts'
import { undoImport } from './undo-import.ts'

/** Three homes on wells, written in three ways, two of them in streets of one name; one home on the town's water. */
const LIST = `No,Name,Street,Town,Tank,Installed,Hardness (gpg),Iron (mg/L),Water supply
1,Ann Poe,Weir Road 8,Lark,10x54,2012,31,2.5,well
2,Bo Dow,Mill Lane 3,Lark,9x48,2014,18,0.4,Private Well
3,Cy Fay,Weir Road 8,Quill,10x54,2016,24,,own well
4,Di Gow,Elm St 1,Lark,10x54,2018,15,,Lark town
`

let firm: Firm

beforeAll(async () => {
  await testDatabase()
  setClock(() => new Date('2026-12-02T16:00:00Z'))
})
beforeEach(async () => {
  firm = await makeFirm()
})
afterAll(async () => {
  setClock()
  await closeTaskQueue()
  await closeClients()
})

/** The name of each home's supply, by customer number. */
async function suppliesOfHomes() {
  const { customers, tenures, sites, supplies } = await stateOf(firm)
  const live = sites.filter((site) => site.archivedAt === null)
  return Object.fromEntries(
    live.map((site) => {
      const customer = customers.find((one) => one.id === tenures.find((tenure) => tenure.siteId === site.id)?.customerId)
      return [customer?.reference, supplies.find((one) => one.id === site.waterSupplyId)?.name]
    }),
  )
}
const WELLS = { 1: 'Well at Weir Road 8', 2: 'Well at Mill Lane 3', 3: 'Well at Weir Road 8, Quill', 4: 'Lark town' }

describe('homes on private wells', () => {
  test('each have a supply of their own, named after the place, with the hardness and iron of its row', async () => {
    await bringIn(firm, LIST)
    expect(await suppliesOfHomes()).toEqual(WELLS)
    const { supplies, sites, softeners } = await stateOf(firm)
    expect(Object.fromEntries(supplies.map((one) => [one.name, one.kind]))).toEqual({
      'Lark town': 'town',
      'Well at Mill Lane 3': 'private-well',
      'Well at Weir Road 8': 'private-well',
      'Well at Weir Road 8, Quill': 'private-well',
    })
    const waters = await Promise.all(
      sites.map(async ({ id: siteId, waterSupplyId }) => {
        const softenerId = softeners.find((one) => one.siteId === siteId)?.id ?? ''
        const water = await inCompany(firm, (tx) => readBedWater(tx, firm.companyId, { siteId, waterSupplyId, softenerId }))
        return [water.source, water.hardnessGpg, water.ironMgL]
      }),
    )
    expect(waters).toEqual([
      ['private-well', 31, 2.5],
      ['private-well', 18, 0.4],
      ['private-well', 24, null],
      ['town', 15, null],
    ])
  })

  test('find the same wells again: the same list twice changes nothing, and one more home adds one well', async () => {
    await bringIn(firm, LIST)
    const before = await stateOf(firm)
    expect((await bringIn(firm, LIST)).done).toMatchObject({ created: 0, updated: 0, unchanged: 4 })
    expect(await stateOf(firm)).toEqual(before)
    await bringIn(firm, `${LIST}5,Ed Hill,Kiln Road 2,Lark,10x54,2019,20,,well\n`)
    expect(await suppliesOfHomes()).toEqual({ ...WELLS, 5: 'Well at Kiln Road 2' })
    expect((await stateOf(firm)).supplies).toHaveLength(5)
  })

  test('keep a well under the name somebody gave it, and a town that somebody moved a home to, without a spare well', async () => {
    await bringIn(firm, LIST)
    const { companyId } = firm
    const { supplies, sites } = await stateOf(firm)
    const town = supplies.find((one) => one.kind === 'town')?.id ?? ''
    await inCompany(firm, async (tx) => {
      await tx.waterSupply.updateMany({ where: { companyId, name: 'Well at Mill Lane 3' }, data: { name: 'Dow’s deep well' } })
      await tx.site.updateMany({ where: { companyId, id: sites[0]?.id }, data: { waterSupplyId: town, version: { increment: 1 } } })
    })
    await bringIn(firm, LIST)
    expect(await suppliesOfHomes()).toEqual({ ...WELLS, 1: 'Lark town', 2: 'Dow’s deep well' })
    expect((await stateOf(firm)).supplies).toHaveLength(4)
  })

  test('are parted where an earlier release put them on one supply together', async () => {
    await bringIn(firm, LIST.replace(/(well|Private Well|own well)$/gm, 'Hill wells'))
    expect((await suppliesOfHomes())[1]).toBe('Hill wells')
    const { done } = await bringIn(firm, LIST)
    expect(done).toMatchObject({ created: 0, updated: 3, unchanged: 1 })
    expect(await suppliesOfHomes()).toEqual(WELLS)
  })

  test('take their wells up again after the import was undone', async () => {
    const { batchId } = await bringIn(firm, LIST)
    const { version } = await batchOf(firm, batchId)
    await undoImport(firm, { commandId: newId(), batchId, version })
    await bringIn(firm, LIST)
    expect(await suppliesOfHomes()).toEqual(WELLS)
    expect((await stateOf(firm)).supplies.map((one) => one.archivedAt)).toEqual([null, null, null, null])
  })

  test('are named after nobody where the row has no street, and tell what is in each home’s own water', async () => {
    await bringIn(
      firm,
      'Name,Phone,Tank,Water supply,Disinfectant\nAnn Poe,555 201 3344,10x54,well,chlorine\nBo Dow,555 201 3345,10x54,well,\n',
    )
    const { supplies } = await stateOf(firm)
    const told = Object.fromEntries(supplies.map((one) => [one.name, one.periods.map((period) => period.disinfectant)]))
    expect(told).toEqual({ 'Well at a home': ['free-chlorine'], 'Well at a home (2)': [] })
  })
})
