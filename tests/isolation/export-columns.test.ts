import {
  EXPORTED,
  EXPORTED_OF_COMPANY,
  EXPORTED_OF_PEOPLE,
  type ExportedTable,
  exportedColumns,
  SECRET,
  STAYS,
} from '@almanac/database/export-columns'
import { TABLES } from '@almanac/database/tables'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inspector } from '../support/two-firms.ts'

let db: pg.Client

beforeAll(async () => {
  db = await inspector()
})
afterAll(() => db.end())

/** What goes, as 'table.column'. */
const goes = (): string[] => [
  ...(Object.keys(EXPORTED) as ExportedTable[]).flatMap((table) => exportedColumns(table).map((column) => `${table}.${column}`)),
  ...EXPORTED_OF_COMPANY.split(' ').map((column) => `company.${column}`),
  ...Object.entries(EXPORTED_OF_PEOPLE).flatMap(([table, columns]) => columns.split(' ').map((column) => `${table}.${column}`)),
]

/** What the catalogue and the export's lists say differently, as sentences. */
async function differences(): Promise<string[]> {
  const { rows } = await db.query<{ table: string; column: string }>(
    `select table_name as "table", column_name as "column" from information_schema.columns where table_schema = 'public'
     and table_name <> '_prisma_migrations' and table_name <> 'catalogue_as_migrated'`,
  )
  const there = rows
    .filter(({ table, column }) => !(column === 'company_id' && (TABLES.tenant as readonly string[]).includes(table)))
    .map(({ table, column }) => `${table}.${column}`)
  const listed = goes()
  const said = (name: string) => {
    const table = name.split('.')[0] ?? ''
    return name in STAYS || table in STAYS || (SECRET as readonly string[]).includes(table)
  }
  return [
    ...there.filter((name) => !listed.includes(name) && !said(name)).map((name) => `${name}: neither goes nor has a reason`),
    ...listed.filter((name) => !there.includes(name)).map((name) => `${name}: goes, but is not in the database`),
    ...listed.filter((name) => said(name)).map((name) => `${name}: goes, and has a reason to stay`),
    ...Object.keys(STAYS)
      .filter((name) => !there.some((one) => one === name || one.startsWith(`${name}.`)) && !name.endsWith('.company_id'))
      .map((name) => `${name}: has a reason, but is not in the database`),
  ].sort()
}

async function differencesAfter(sql: string): Promise<string[]> {
  await db.query('begin')
  try {
    await db.query(`set local role almanac_owner; ${sql}; reset role`)
    return await differences()
  } finally {
    await db.query('rollback')
  }
}

test('every table and column of a company, and of its people, is exported or has a reason', async () => {
  expect(await differences()).toEqual([])
})

describe('the comparison turns red for', () => {
  test.each([
    ['a new column', 'alter table site add column gate text', ['site.gate: neither goes nor has a reason']],
    ['a new table', 'create table planted (company_id uuid, id uuid)', [/^planted\.company_id/, /^planted\.id/]],
    ['a new column of a person', 'alter table person add column nickname text', ['person.nickname: neither goes nor has a reason']],
    ['a column that is gone', 'alter table site drop column access_notes', ['site.access_notes: goes, but is not in the database']],
  ])('%s', async (_what, sql, findings) => {
    expect(await differencesAfter(sql)).toEqual(findings.map((one) => (typeof one === 'string' ? one : expect.stringMatching(one))))
  })
})

test('no column goes that signs anybody in', () => {
  expect(goes().filter((name) => /password|token|secret|hash$|backup_codes/.test(name))).toEqual([
    // Of the records a forecast was fitted to, not of a secret.
    'forecast_backtest.data_hash',
    'forecast_fit.data_hash',
  ])
})
