import { closeClients } from '@almanac/database/client'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { showRows } from './show-rows.ts'
import { bringIn, makeFirm, rowsOf, stateOf } from './test-import.ts'

/** Lark's water is soft: about 40 mg/L. Quill's is hard. 42 mg/L is 2.45 gpg, by hand. */
const LIST = `Name,Street,Town,Tank,Hardness,Water supply
Ann Poe,1 Elm St,Lark,10x54,38 ppm,Lark
Bo Dow,2 Elm St,Lark,10x54,41 ppm,Lark
Cy Fay,3 Elm St,Lark,10x54,42,Lark
Di Gow,4 Elm St,Quill,10x54,19,Quill
Ed Hall,5 Elm St,Quill,10x54,310,Quill
Flo Ives,6 Elm St,Quill,10x54,320,Quill
`

beforeAll(() => testDatabase())
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

test('a bare hardness is read by what the rest of its supply says: as checked, as shown and as written', async () => {
  const firm = await makeFirm()
  const { batchId } = await bringIn(firm, LIST)
  const written = (await stateOf(firm)).tests.map((one) => one.hardnessGpg)
  expect(written.map((gpg) => Number(gpg?.toFixed(2)))).toEqual([2.22, 2.4, 2.45, 19, 18.11, 18.69])
  const shown = await showRows(firm, { batchId, only: 'all', limit: 10 })
  expect(shown.rows[2]?.understood?.water).toBe('2.45 gpg, Lark')
  const notes = (await rowsOf(firm, batchId)).map((row) => (row.notes as string[]).filter((note) => note.includes('no unit')))
  expect(notes[2]).toEqual(['"42" has no unit and was read as mg/L, as 2 other rows give this supply about 2.2 gpg.'])
  expect(notes[3]).toEqual(['"19" has no unit and was read as grains per gallon, as 2 other rows give this supply about 18 gpg.'])
})
