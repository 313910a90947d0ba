import { closeClients } from '@almanac/database/client'
import { closeTaskQueue } from '@almanac/runtime/task-queue'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { testDatabase } from '../../../tests/support/test-database.ts'
import { applyImport } from './apply-import.ts'
import { showRows } from './show-rows.ts'
import { bringIn, makeFirm, prepare } from './test-import.ts'

const HEADER = 'No,Name,Phone,Street,Town,Tank,Installed,Last seen,Hardness (gpg),Water supply,OK to email?\n'
const BEFORE = `${HEADER}1,Ann Poe,555-201-3344,1 Elm St,Lark,10x54,2012-03-04,2024-05-03,18,Lark town,yes
2,Bo Dow,555-201-3345,2 Elm St,Lark,10x54,2014-03-04,2024-05-03,18,Lark town,yes
`
const AFTER = `${HEADER}1,Ann Poe,555-201-9999,1 Elm St,Lark,12x52,2012-03-04,2025-06-07,21,well,no
2,Bo Dow,555-201-3345,2 Elm St,Lark,10x54,2014-03-04,2024-05-03,18,Lark town,yes
`

beforeAll(() => testDatabase())
afterAll(async () => {
  await closeTaskQueue()
  await closeClients()
})

test('a list brought in again shows old and new, row by row and field by field, before it is written and after', async () => {
  const firm = await makeFirm()
  await bringIn(firm, BEFORE)
  const batchId = await prepare(firm, AFTER)
  const changed = async () =>
    (await showRows(firm, { batchId, only: 'changed', limit: 10 })).rows.map((row) => ({
      line: row.line,
      customer: row.understood?.customer,
      changes: row.changes.map(({ what, from, to }) => `${what}: ${from} → ${to}`).sort(),
    }))
  const expected = (supply: string) => [
    {
      line: 2,
      customer: 'Ann Poe, no. 1',
      changes: [
        'consent to email: yes → no',
        'day last seen: May 3, 2024 → Jun 7, 2025',
        'day of the test: May 3, 2024 → Jun 7, 2025',
        'hardness: 18 gpg → 21 gpg',
        'phone: 555-201-3344 → 555-201-9999',
        'tank size: 10 × 54 in → 12 × 52 in',
        `water supply: Lark town → ${supply}`,
      ],
    },
  ]
  expect(await changed()).toMatchObject(expected('a new supply'))
  await applyImport({ companyId: firm.companyId, batchId })
  expect(await changed()).toMatchObject(expected('Well at 1 Elm St'))
})
