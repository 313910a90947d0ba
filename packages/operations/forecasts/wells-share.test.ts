import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readBedInputs } from '@almanac/database/read/bed-inputs'
import { PRIVATE_WELLS } from '@almanac/records/supply-kind'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { bringIn, makeFirm, stateOf } from '../imports/test-import.ts'
import { forecastInput } from './forecast-input.ts'

const LIST = `No,Name,Street,Town,Tank,Installed,Hardness (gpg),Water supply
1,Ann Poe,Weir Road 8,Lark,10x54,2012,31,well
2,Bo Dow,Mill Lane 3,Lark,9x48,2014,18,well
3,Cy Fay,Elm St 1,Lark,10x54,2016,15,Lark town
4,Di Gow,Elm St 2,Quill,10x54,2018,12,Quill town
`

beforeAll(() => testDatabase())
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

test('beds on different wells share one effect on life and no water; beds of different towns share neither', async () => {
  const firm = await makeFirm()
  await bringIn(firm, LIST)
  const { beds, supplies } = await stateOf(firm)
  const ids = beds.map((bed) => bed.id)
  const inputs = (await inCompany(firm, (tx) => readBedInputs(tx, firm.companyId, ids)))
    .sort((a, b) => ids.indexOf(a.id) - ids.indexOf(b.id))
    .map((bed) => forecastInput(bed, '2026-12-02', null))
  const townId = (name: string) => supplies.find((one) => one.name === name)?.id
  expect(inputs.map((one) => one.supply)).toEqual([PRIVATE_WELLS, PRIVATE_WELLS, townId('Lark town'), townId('Quill town')])
  expect(inputs.map((one) => one.water.tests.map((reading) => reading.hardnessGpg))).toEqual([[31], [18], [15], [12]])
})
