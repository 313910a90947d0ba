import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { batchOf, bringIn, type Firm, makeFirm, prepare, stateOf } from './test-import.ts'

const HEADER = 'No,Name,Street,Town,Tank,Water supply\n'
const LIST = `${HEADER}1,Ann Poe,1 Elm St,Lark,10x54,town
2,Bo Dow,2 Elm St,Lark,9x48,TOWN
3,Cy Fay,3 Elm St,Lark,9x48,town
4,Di Gow,4 Mill Rd,Lark,9x48,hill
5,Ed Hall,5 Mill Rd,Lark,9x48,hill
6,Flo Ives,6 Mill Rd,Lark,9x48,Quill main
`

beforeAll(() => testDatabase())
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

async function firmWithSupply(name: string): Promise<{ firm: Firm; waterSupplyId: string }> {
  const firm = await makeFirm()
  const waterSupplyId = newId()
  await inCompany(firm, (tx) => tx.waterSupply.create({ data: { companyId: firm.companyId, id: waterSupplyId, name, kind: 'town' } }))
  return { firm, waterSupplyId }
}
const suppliesOfSites = async (firm: Firm) => {
  const { sites, supplies } = await stateOf(firm)
  return sites.map((site) => supplies.find((one) => one.id === site.waterSupplyId)?.name)
}

describe('the supplies a list names', () => {
  test('are shown with their rows, and mean what somebody chose: one on record, a well for each home, else one of that name', async () => {
    const { firm, waterSupplyId } = await firmWithSupply('Larkmoor municipal')
    const usual = (await batchOf(firm, await prepare(firm, LIST))).mapping.supplies
    expect(usual?.map(({ name, rows, choice, from }) => [name, rows, choice.to, from])).toEqual([
      ['town', 3, 'named', 'usual'],
      ['hill', 2, 'named', 'usual'],
      ['Quill main', 1, 'named', 'usual'],
    ])
    const chosen = [
      { name: 'town', choice: { to: 'supply' as const, waterSupplyId } },
      { name: 'Hill', choice: { to: 'own-wells' as const } },
    ]
    await bringIn(firm, LIST, 'list.csv', null, chosen)
    const municipal = 'Larkmoor municipal'
    const own = [municipal, municipal, municipal, 'Well at 4 Mill Rd', 'Well at 5 Mill Rd', 'Quill main']
    expect(await suppliesOfSites(firm)).toEqual(own)
    expect((await stateOf(firm)).supplies).toHaveLength(4)
  })

  test('are remembered for the next list, while the supply they mean is on record', async () => {
    const { firm, waterSupplyId } = await firmWithSupply('Larkmoor municipal')
    await bringIn(firm, LIST, 'list.csv', null, [{ name: 'town', choice: { to: 'supply', waterSupplyId } }])
    const next = `${HEADER}7,Gus Kay,7 Elm St,Lark,10x54,Town\n`
    const { batch } = await bringIn(firm, next)
    expect(batch.mapping.supplies?.map(({ from, choice }) => [from, choice])).toEqual([['earlier', { to: 'supply', waterSupplyId }]])
    expect((await suppliesOfSites(firm)).at(-1)).toBe('Larkmoor municipal')
    await inCompany(firm, (tx) =>
      tx.waterSupply.updateMany({ where: { companyId: firm.companyId, id: waterSupplyId }, data: { archivedAt: new Date() } }),
    )
    const later = await batchOf(firm, await prepare(firm, `${HEADER}8,Hal Low,8 Elm St,Lark,10x54,town\n`))
    expect(later.mapping.supplies?.map(({ from, choice }) => [from, choice.to])).toEqual([['usual', 'named']])
  })

  test('of another firm are not found', async () => {
    const [one, other] = [await firmWithSupply('Larkmoor municipal'), await firmWithSupply('Quill main')]
    const chosen = [{ name: 'town', choice: { to: 'supply' as const, waterSupplyId: other.waterSupplyId } }]
    await expect(prepare(one.firm, LIST, 'list.csv', null, chosen)).rejects.toMatchObject({ code: 'not-found' })
  })
})
