import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { newId } from '@almanac/runtime/ids'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { type Firm, makeFirm } from '../imports/test-import.ts'
import { addItem } from './add-item.ts'
import { addUsualItems } from './add-usual-items.ts'
import { archiveItem, changeItem } from './change-item.ts'

let firm: Firm
beforeAll(async () => {
  await testDatabase()
})
beforeEach(async () => {
  firm = await makeFirm()
})
afterAll(closeClients)

const facts = { name: 'Resin of the valley', bagFt3: 1, resinKind: 'gel-8' as const, tubeOdIn: null, priceMinor: 9_800, leadDays: 10 }
const add = (more: object = {}) =>
  addItem(firm, { commandId: newId(), ...facts, kind: 'resin', unit: 'bag', onHand: 4, ...more } as Parameters<typeof addItem>[1])
const items = () => inCompany(firm, (tx) => tx.stockItem.findMany({ where: { companyId: firm.companyId }, orderBy: { name: 'asc' } }))

describe('the stores’ list', () => {
  test('an item comes with what is on hand as its first count', async () => {
    const { stockItemId, version } = await add()
    const [item] = await items()
    expect(item).toMatchObject({ id: stockItemId, version, ...facts, kind: 'resin', unit: 'bag', onHand: 4 })
    const moves = await inCompany(firm, (tx) => tx.movement.findMany({ where: { companyId: firm.companyId } }))
    expect(moves.map(({ reason, quantity }) => [reason, quantity])).toEqual([['counted', 4]])
  })

  test('what a kit could not find again is refused: a resin without its bag, a tube without its diameter, a unit of another kind', async () => {
    await expect(add({ bagFt3: null })).rejects.toMatchObject({ code: 'invalid', detail: { field: 'bagFt3' } })
    await expect(add({ kind: 'tube', unit: 'piece' })).rejects.toMatchObject({ code: 'invalid', detail: { field: 'tubeOdIn' } })
    await expect(add({ unit: 'lb' })).rejects.toMatchObject({ code: 'invalid', detail: { field: 'unit' } })
    // Nobody has a million bags by a slip.
    await expect(add({ onHand: 99_999 })).rejects.toThrow(/unusual/)
    expect(await items()).toEqual([])
  })

  test('a name is there once; that of an archived item brings it back with its history', async () => {
    const { stockItemId, version } = await add({ onHand: 0 })
    await expect(add()).rejects.toThrow(/in the stores already/)
    await archiveItem(firm, { commandId: newId(), stockItemId, version })
    // Its movements are in bags.
    await expect(add({ kind: 'salt', unit: 'lb' })).rejects.toThrow(/another kind of thing/)
    const back = await add({ priceMinor: 12_000, onHand: 2 })
    expect(back.stockItemId).toBe(stockItemId)
    expect(await items()).toMatchObject([{ id: stockItemId, archivedAt: null, priceMinor: 12_000, onHand: 2 }])
  })

  test('changes keep what kind it is and refuse another’s name and a stale page', async () => {
    const { stockItemId, version } = await add()
    await add({ name: 'Other resin' })
    const change = (more: object) => changeItem(firm, { commandId: newId(), stockItemId, version, ...facts, ...more })
    await expect(change({ name: 'Other resin' })).rejects.toThrow(/Another item has the name/)
    const changed = await change({ name: 'Resin, 1 ft³', bagFt3: 0.5, leadDays: 3 })
    expect(changed.version).toBe(version + 1)
    await expect(change({ leadDays: 9 })).rejects.toMatchObject({ code: 'version-conflict' })
    expect((await items()).find((one) => one.id === stockItemId)).toMatchObject({
      name: 'Resin, 1 ft³',
      bagFt3: 0.5,
      leadDays: 3,
      kind: 'resin',
      onHand: 4,
    })
  })

  test('an item with something on the shelf is not archived', async () => {
    const { stockItemId, version } = await add()
    await expect(archiveItem(firm, { commandId: newId(), stockItemId, version })).rejects.toThrow(
      '4 bags of Resin of the valley are still on hand.',
    )
    expect((await items())[0]?.archivedAt).toBeNull()
  })

  test('a new company begins with what a rebed usually takes, once', async () => {
    const first = await addUsualItems(firm, { commandId: newId() })
    const there = await items()
    expect(first.added).toBe(there.length)
    expect(there.filter((one) => one.kind === 'resin').map((one) => [one.resinKind, one.bagFt3])).toEqual(
      expect.arrayContaining([
        ['gel-8', 1],
        ['gel-10', 0.5],
      ]),
    )
    expect(there.filter((one) => one.kind === 'tube').map((one) => one.tubeOdIn)).toEqual([1.05, 1.9])
    expect(there.every((one) => one.onHand === 0 && one.priceMinor === null)).toBe(true)
    expect((await addUsualItems(firm, { commandId: newId() })).added).toBe(0)
  })
})
