import { columnValues } from '@almanac/records/columns'
import { openJobStates } from '@almanac/records/job-state'
import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inspector } from '../support/two-firms.ts'

let db: pg.Client

beforeAll(async () => {
  db = await inspector()
})
afterAll(() => db.end())

type Checked = { column: string; words: string[] }

/** Words listed in a definition as PostgreSQL writes it: `(state = ANY (ARRAY['a'::text, …]))`; a list of one as `(kind = 'a'::text)`. */
function listsOf(definition: string): Checked[] {
  const many = [...definition.matchAll(/\(?"?(\w+)"?\)?(?:::text)? = ANY \(\(?ARRAY\[([^\]]*)\]/g)].map(([, column, list]) => ({
    column: column ?? '',
    words: [...(list ?? '').matchAll(/'((?:[^']|'')*)'/g)].map(([, word]) => word ?? ''),
  }))
  if (many.length > 0) return many
  const only = /^CHECK \(\("?(\w+)"? = '([^']*)'::text\)\)$/.exec(definition)
  return only ? [{ column: only[1] ?? '', words: [only[2] ?? ''] }] : []
}

/** What the database's checks and the code's enumerations say differently, as sentences. */
async function differences(): Promise<string[]> {
  const { rows } = await db.query<{ table: string; definition: string }>(
    `select conrelid::regclass::text as "table", pg_get_constraintdef(oid) as definition
     from pg_constraint where contype = 'c' and connamespace = 'public'::regnamespace`,
  )
  const checks = rows.flatMap(({ table, definition }) =>
    listsOf(definition).map(({ column, words }) => ({ name: `${table}.${column}`, words })),
  )
  const sorted = (words: readonly string[]) => [...words].sort().join(', ')
  return [
    ...checks.flatMap(({ name, words }) => {
      const known = columnValues[name]
      if (!known) return [`${name}: the database lists words, packages/records has none`]
      return sorted(known) === sorted(words) ? [] : [`${name}: records say ${sorted(known)}; the database says ${sorted(words)}`]
    }),
    ...Object.keys(columnValues)
      .filter((name) => !checks.some((check) => check.name === name))
      .map((name) => `${name}: in packages/records, but the database has no check`),
  ].sort()
}

/** The same once `sql` was planted as the tables' owner, and taken out again. */
async function differencesAfter(sql: string): Promise<string[]> {
  await db.query('begin')
  try {
    await db.query(`set local role almanac_owner; ${sql}; reset role`)
    return await differences()
  } finally {
    await db.query('rollback')
  }
}

test('every enumeration has the same words in the code and in the database', async () => {
  expect(await differences()).toEqual([])
})

describe('the comparison turns red for', () => {
  test.each([
    [
      'a new list of words',
      `alter table site add column gate text check (gate in ('open', 'shut'))`,
      'site.gate: the database lists words',
    ],
    ['a list of one word', `alter table site add column gate text check (gate in ('open'))`, 'site.gate: the database lists words'],
    [
      'a word that only the database knows',
      `alter table valve drop constraint valve_control_check, add constraint valve_control_check check (control in ('meter', 'timer', 'unknown', 'moon'))`,
      'valve.control: records say meter, timer, unknown; the database says meter, moon, timer, unknown',
    ],
    ['a check that is gone', 'alter table bed drop constraint bed_end_cause_check', 'bed.end_cause: in packages/records, but'],
  ])('%s', async (_what, sql, finding) => {
    expect((await differencesAfter(sql)).join('\n')).toContain(finding)
  })
})

test('one open rebed a bed: the exclusion lists the states that the code calls open', async () => {
  const { rows } = await db.query<{ definition: string }>(
    `select pg_get_constraintdef(oid) as definition from pg_constraint where conname = 'job_one_open_rebed'`,
  )
  expect(listsOf(rows[0]?.definition ?? '').map(({ words }) => words.sort())).toEqual([[...openJobStates].sort()])
})
