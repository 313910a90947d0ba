import { closeClients } from '@almanac/database/client'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bringIn, makeFirm, stateOf } from './test-import.ts'

const KNOWN: [heading: string, ann: string, bo: string][] = [
  ['Customer no', '1', '2'],
  ['Name', 'Ann Poe', 'Bo Dow'],
  ['Phone', '555-201-3344', '555-201-3345'],
  ['Street', '1 Elm St', '2 Elm St'],
  ['Town', 'Lark', 'Lark'],
  ['Tank', '10x54', '9x48'],
  ['Installed', '2012-03-04', '2014-03-04'],
  ['Hardness (gpg)', '18', '21'],
]
/** What a program of fifteen years leaves beside them: codes, flags and amounts that nothing here is made of. */
const OTHERS = [
  'Route',
  'Branch code',
  'GL account',
  'Tax flag',
  'Balance',
  'Terms',
  'Last invoice',
  'Sort key',
  'Print flag',
  'Legacy key',
]

beforeAll(() => testDatabase())
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

test('a list of sixty columns goes in by those that mean something, which stand anywhere among them', async () => {
  const filler = Array.from({ length: 60 - KNOWN.length }, (_, at): [string, string, string] => [
    `${OTHERS[at % OTHERS.length]} ${Math.floor(at / OTHERS.length) + 1}`,
    `X${(at * 7) % 13}`,
    `X${(at * 5) % 11}`,
  ])
  // One that means something after every sixth that does not.
  const columns = [...filler]
  for (const [at, known] of KNOWN.entries()) columns.splice(at * 7 + 6, 0, known)
  expect(columns).toHaveLength(60)
  const list = [0, 1, 2].map((row) => columns.map((column) => column[row]).join(',')).join('\n')
  const firm = await makeFirm()
  const { done, batch } = await bringIn(firm, list)
  expect(batch.mapping.columns).toHaveLength(60)
  const chosen = batch.mapping.columns.filter((column) => column.field !== null).map((column) => column.header)
  expect(chosen).toEqual(expect.arrayContaining(KNOWN.map(([heading]) => heading)))
  expect(done).toMatchObject({ created: 2, problem: 0, leftEmpty: 0, customers: 2, sites: 2, softeners: 2 })
  const { contacts, tanks, tests, beds } = await stateOf(firm)
  expect(contacts.map((one) => one.phone)).toEqual(['555-201-3344', '555-201-3345'])
  expect(tanks.map((one) => one.diameterIn)).toEqual([10, 9])
  expect(tests.map((one) => one.hardnessGpg)).toEqual([18, 21])
  expect(beds.map((one) => one.beganAsWritten)).toEqual(['2012-03-04', '2014-03-04'])
})
