import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readBedPage } from '@almanac/database/read/bed-page'
import { newId } from '@almanac/runtime/ids'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { changeFigure } from '../firm/change-figure.ts'
import { type Firm, makeBed, makeFirm } from '../jobs/test-firm.ts'
import { changeSoftener } from './change-softener.ts'

let firm: Firm

const card = {
  ...{ label: 'Old dial valve', labelWords: ['dial'], control: 'timer' as const, tubeOdIn: 0.8125, backwashGpm: [1.5], refillGpm: null },
  ...{ tubeRule: '', seals: '' },
}
const give = (softenerId: string, version: number, valveCardId?: string | null) =>
  changeSoftener(firm, {
    ...{ commandId: newId(), softenerId, version, label: 'House', location: '', arrangement: 'single', peopleServed: 4, notes: '' },
    valveCardId,
  })
const valves = (softenerId: string) => inCompany(firm, (tx) => tx.valve.findMany({ where: { softenerId } }))

beforeAll(async () => {
  await testDatabase()
  firm = await makeFirm()
})
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

test('a valve goes by one of the firm’s cards, is taken down where there was none, and loses the card again', async () => {
  const { softenerId, bedId } = await makeBed(firm)
  await give(softenerId, 1, 'usual-meter')
  expect(await valves(softenerId)).toMatchObject([{ label: 'Metered house valve', control: 'meter', cardId: 'usual-meter', version: 1 }])
  await changeFigure(firm, { commandId: newId(), key: 'valve:own', version: 0, value: card, note: null })
  await give(softenerId, 2, 'own')
  expect((await readBedPage(firm, bedId)).valve).toMatchObject({ cardId: 'own', version: 2 })
  await give(softenerId, 3)
  expect(await valves(softenerId)).toMatchObject([{ cardId: 'own', control: 'timer', version: 2 }])
  await give(softenerId, 4, null)
  expect(await valves(softenerId)).toMatchObject([{ cardId: null, version: 3 }])
})

test('a card that the firm does not have is not found, another firm’s as well, and nothing is changed', async () => {
  const other = await makeFirm()
  await changeFigure(other, { commandId: newId(), key: 'valve:theirs', version: 0, value: card, note: null })
  const { softenerId } = await makeBed(firm, 'Weir House')
  for (const cardId of ['theirs', 'nothing']) await expect(give(softenerId, 1, cardId)).rejects.toMatchObject({ code: 'not-found' })
  expect(await valves(softenerId)).toEqual([])
  expect(await give(softenerId, 1, 'usual-timer')).toMatchObject({ version: 2 })
})
