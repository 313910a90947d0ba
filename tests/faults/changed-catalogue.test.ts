import { refuseChangedCatalogue } from '@almanac/database/catalogue-check'
import { closeClients } from '@almanac/database/client'
import type pg from 'pg'
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest'
import { type TestDatabase, testDatabase } from '../support/test-database.ts'
import { inspector } from '../support/two-firms.ts'

// Plain JavaScript, without types of its own.
const { prepareDatabase } = await import(new URL('../../scripts/prepare-database.mjs', import.meta.url).href)
let db: pg.Client
let urls: TestDatabase

beforeAll(async () => {
  urls = await testDatabase()
  db = await inspector()
})
afterEach(() => vi.unstubAllEnvs())
afterAll(async () => {
  await closeClients()
  await db.end()
})

/** What somebody with the owner's rights or more could do to a database beside its migrations, what takes it back, and what the start says of it. */
const PLANTED: [string, string, string, RegExp][] = [
  [
    'row security switched off',
    'alter table customer disable row level security',
    'alter table customer enable row level security',
    /table public\.customer was “.*row security forced.*” and is “.*row security off/,
  ],
  [
    'row security that the owner passes by',
    'alter table customer no force row level security',
    'alter table customer force row level security',
    /table public\.customer was .*row security on;/,
  ],
  [
    'an open policy',
    'create policy open on customer for select using (true)',
    'drop policy open on customer',
    /policy public\.customer\.open was not there \(SELECT for everyone using true\)/,
  ],
  [
    'a policy that was widened',
    'alter policy own_rows_read on customer using (company_id is not null)',
    `alter policy own_rows_read on customer using (company_id = (select nullif(current_setting('app.company_id', true), '')::uuid))`,
    /policy public\.customer\.own_rows_read was .* and is .*company_id IS NOT NULL/,
  ],
  [
    'an unpoliced table in another schema',
    'create schema archive; grant usage on schema archive to almanac_app; create table archive.customer as select * from customer; grant select on archive.customer to almanac_app',
    'drop schema archive cascade',
    /schema archive was not there .*table archive\.customer was not there \(.*row security off; almanac_app: SELECT/,
  ],
  [
    'an owner’s view and a definer function in another schema',
    `create schema reports; create view reports.everyone as select * from customer; create function reports.peek() returns bigint language sql security definer as 'select count(*) from customer'`,
    'drop schema reports cascade',
    /function reports\.peek\(\) was not there .*rights of its owner.*view reports\.everyone was not there \(.*rights of its owner/,
  ],
  [
    'a pooled function that answers more than figures',
    `create or replace function almanac_pooled_fits() returns setof jsonb language sql security definer set search_path = public, pg_temp as 'select to_jsonb(c) from customer c'`,
    '',
    /function public\.almanac_pooled_fits\(\) was .* and is /,
  ],
  [
    'a rule that copies rows',
    'create table copied as select * from customer; create rule copy as on insert to customer do also insert into copied select new.*',
    'drop rule copy on customer; drop table copied',
    /rule public\.customer\.copy was not there/,
  ],
  [
    'a grant on what only sign-in reads',
    'grant select (email) on person to almanac_app',
    'revoke select (email) on person from almanac_app',
    /column public\.person\.email was not there \(almanac_app: SELECT\)/,
  ],
  [
    'a promise taken away',
    'alter table assignment drop constraint assignment_one_place',
    '',
    /constraint public\.assignment\.assignment_one_place is gone/,
  ],
]

describe('a start is refused, and says why, after', () => {
  test.each(PLANTED)('%s', async (_what, plant, takeBack, said) => {
    const before = takeBack ? '' : await definition(plant)
    await expect(refuseChangedCatalogue()).resolves.toBeUndefined()
    await db.query(plant)
    try {
      const refused = { code: 'misconfigured', message: expect.stringMatching(new RegExp(said.source, 's')) }
      await expect(refuseChangedCatalogue()).rejects.toMatchObject(refused)
      // Neither does the next migrator take it for its own.
      await expect(prepareDatabase(urls.migrationUrl)).rejects.toThrow(
        said.source.includes('customer') ? /customer/ : /not as its migrations left it/,
      )
    } finally {
      await db.query(takeBack || before)
    }
    await expect(refuseChangedCatalogue()).resolves.toBeUndefined()
  })
})

/** The statement that makes again what `plant` replaces or drops. */
async function definition(plant: string): Promise<string> {
  const sql = plant.includes('function')
    ? `select pg_get_functiondef('almanac_pooled_fits'::regproc) as made`
    : `select 'alter table assignment add constraint assignment_one_place ' || pg_get_constraintdef(oid) as made from pg_constraint where conname = 'assignment_one_place'`
  return (await db.query<{ made: string }>(sql)).rows[0]?.made ?? ''
}

test('what the operator changed on purpose is accepted once, and then is as it should be', async () => {
  await db.query('grant select on company to pg_monitor')
  await expect(refuseChangedCatalogue()).rejects.toThrow('pg_monitor')
  vi.stubEnv('ACCEPT_CATALOGUE', 'on')
  await prepareDatabase(urls.migrationUrl)
  vi.unstubAllEnvs()
  await expect(refuseChangedCatalogue()).resolves.toBeUndefined()
  await prepareDatabase(urls.migrationUrl)
})

test('a migrator that was killed midway does not stand in the way of the next one', async () => {
  await db.query(`insert into catalogue_as_migrated values ('migrating', 'yes'); create table half_done (id int)`)
  await expect(refuseChangedCatalogue()).rejects.toThrow('half_done')
  await prepareDatabase(urls.migrationUrl)
  await expect(refuseChangedCatalogue()).resolves.toBeUndefined()
})

test('a database without the record is not served', async () => {
  await db.query('begin; delete from catalogue_as_migrated; commit')
  await expect(refuseChangedCatalogue()).rejects.toThrow('npm start brings it there')
  await expect(refuseChangedCatalogue({ unmigrated: true })).resolves.toBeUndefined()
  await prepareDatabase(urls.migrationUrl)
  const begun = performance.now()
  await refuseChangedCatalogue()
  expect(performance.now() - begun).toBeLessThan(1000)
})
