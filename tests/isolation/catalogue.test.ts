import { TABLES } from '@almanac/database/tables'
import pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { catalogueFindings } from '../support/catalogue.ts'
import { testDatabase } from '../support/test-database.ts'
import { inspector, makeCompany } from '../support/two-firms.ts'

let db: pg.Client

beforeAll(async () => {
  db = await inspector()
})
afterAll(() => db.end())

/** What the catalogue check says once `sql` was planted; planted as the tables' owner, and taken out again. */
async function findingsAfter(sql: string, known: Parameters<typeof catalogueFindings>[1] = TABLES): Promise<string[]> {
  await db.query('begin')
  try {
    await db.query(`set local role almanac_owner; ${sql}; reset role`)
    return await catalogueFindings(db, known)
  } finally {
    await db.query('rollback')
  }
}

test('every table is known, closed off by company and granted as promised', async () => {
  expect(await catalogueFindings(db, TABLES)).toEqual([])
})

describe('the check turns red for', () => {
  const mine = `company_id = (select nullif(current_setting('app.company_id', true), '')::uuid)`
  const planted = (columns = 'company_id uuid not null, id uuid not null, primary key (company_id, id)') =>
    `create table planted (${columns})`
  const secured = `${planted()}; select almanac_secure_table('planted'::regclass, 'SELECT, INSERT, UPDATE')`
  const withPlanted = { ...TABLES, tenant: [...TABLES.tenant, 'planted'] }

  test('nothing, when a new table is secured and listed', async () => {
    expect(await findingsAfter(secured, withPlanted)).toEqual([])
  })
  test('a table that nobody listed', async () => {
    expect(await findingsAfter(secured)).toEqual(['planted: in the database, but of no kind in tables.ts'])
  })
  test('an open table that is listed as global', async () => {
    const open = `${planted()}; alter table planted enable row level security; create policy r on planted for select using (true); grant select on planted to almanac_app`
    expect(await findingsAfter(open, { ...TABLES, global: [...TABLES.global, 'planted'] })).toEqual([
      'planted: listed as global, but nobody said what it is',
      'planted: a global table with the policies SELECT public true -',
      'planted: company_id of a global table names a record, which belongs to a company',
      'planted: id of a global table names a record, which belongs to a company',
    ])
  })
  test('an unpoliced table', async () => {
    expect(await findingsAfter(`${planted()}; grant select, insert, update on planted to almanac_app`, withPlanted)).toEqual([
      'planted: row security is not enabled',
      'planted: row security is not forced',
      'planted: policies for no command',
    ])
  })
  test.each([
    ['row security that its owner passes by', `${secured}; alter table planted no force row level security`, 'not forced'],
    [
      'a policy that lets everything through',
      `${secured}; drop policy own_rows_read on planted; create policy r on planted for select using (true)`,
      'USING of policy r',
    ],
    [
      'a second policy that opens a command again',
      `${secured}; create policy r on planted for select using (true)`,
      'policies for DELETE, INSERT, SELECT, SELECT',
    ],
    [
      'one policy for all commands',
      `${secured}; drop policy own_rows_read on planted; create policy r on planted using (${mine})`,
      'is for ALL',
    ],
    [
      'a comparison once a row',
      `${secured}; alter policy own_rows_read on planted using (company_id = nullif(current_setting('app.company_id', true), '')::uuid)`,
      'own_rows_read does not compare',
    ],
    [
      'an update that could hand a row over',
      `${secured}; drop policy own_rows_change on planted; create policy c on planted for update using (${mine})`,
      'WITH CHECK of policy c',
    ],
    ['a grant to remove history', 'grant delete on audit_entry to almanac_app', 'audit_entry: the app login has'],
    ['a grant on one column of an identity table', 'grant select (email) on person to almanac_app', 'person: the app login has SELECT'],
    ['a unique that tells of other companies', 'create unique index on site (match_key)', 'site: unique'],
    [
      'a foreign key without the company',
      `${planted('company_id uuid, id uuid, primary key (company_id, id), unique (company_id, id)')}; create unique index one on site (id); alter table job add foreign key (site_id) references site (id)`,
      'does not carry company_id',
    ],
    ['a view with its owner’s rights', 'create view all_sites as select * from site', 'public.all_sites: a view'],
    [
      'a function with its owner’s rights',
      `create function peek() returns bigint language sql security definer as 'select count(*) from site'`,
      'public.peek(): runs',
    ],
    [
      'an unpoliced table in another schema',
      'create schema archive; grant usage on schema archive to almanac_app; create table archive.site as select * from site; grant select on archive.site to almanac_app',
      'archive: a schema that nobody knows\narchive.site: a table or view outside',
    ],
    [
      'an owner’s view in another schema',
      'create schema reports; create view reports.everyone as select * from customer',
      'reports.everyone: a view that reads with its owner',
    ],
    [
      'a definer function in another schema',
      `create schema reports; create function reports.peek() returns bigint language sql security definer as 'select count(*) from site'`,
      'reports.peek(): runs with its owner',
    ],
    ['a table among the queue’s', 'create table queue.copied (id int)', 'queue.copied: a table or view outside'],
    [
      'a pooled function that answers customers',
      `create or replace function almanac_pooled_fits() returns setof jsonb language sql security definer set search_path = public, pg_temp as 'select to_jsonb(c) from customer c'`,
      'almanac_pooled_fits(): looks across companies, and does something else',
    ],
    [
      'a rule that copies rows',
      'create rule copy as on insert to customer do also insert into customer select new.*',
      'public.customer: rule copy',
    ],
    ['a sequence that companies share', 'create sequence bill_number', 'bill_number: a sequence'],
    [
      'a global table that everyone may read',
      'create policy open on company for select to almanac_app using (true)',
      'company: a global table with the policies',
    ],
    ['a global table that names records of companies', 'alter table company add column best_bed uuid', 'best_bed of a global table'],
  ])('%s', async (_what, sql, finding) => {
    expect((await findingsAfter(sql, sql.includes('planted') ? withPlanted : TABLES)).join('\n')).toContain(finding)
  })
})

describe('a query at the app’s login', () => {
  let app: pg.Client
  let companyId: string

  /** The plan inside the scope of the company. */
  async function plan(sql: string): Promise<string> {
    await app.query('begin')
    await app.query(`select set_config('app.company_id', $1, true)`, [companyId])
    const { rows } = await app.query<Record<string, string>>(`explain ${sql}`)
    await app.query('rollback')
    return rows.map((row) => row['QUERY PLAN']).join('\n')
  }

  beforeAll(async () => {
    app = new pg.Client({ connectionString: (await testDatabase()).appUrl })
    await app.connect()
    companyId = await makeCompany(db)
    const other = await makeCompany(db)
    await db.query(`set session_replication_role = replica`) // rows of two tables only: their parents are not needed here
    for (const id of [companyId, other]) {
      await db.query(`insert into search_token select $1, md5(n::text), gen_random_uuid() from generate_series(1, 8000) n`, [id])
      await db.query(
        `insert into bed_forecast (company_id, id, bed_id, site_id, run_id, as_of_day, computed_at, due50_day, chance_12_months, weakness, month_chances, drivers, assumptions, missing)
         select $1, gen_random_uuid(), gen_random_uuid(), gen_random_uuid(), gen_random_uuid(), '2026-12-01', now(), '2027-01-01'::date + n, n / 8000.0, 0, '', '[]', '[]', '[]'
         from generate_series(1, 8000) n`,
        [id],
      )
    }
    await db.query('reset session_replication_role; analyze search_token, bed_forecast')
  })
  afterAll(() => app.end())

  test.each([
    ['a prefix search', `select site_id from search_token where token >= 'abc' and token < 'abd'`, /Index.* (using|on) search_token_pkey/],
    [
      'the order by chance',
      'select id from bed_forecast order by chance_12_months desc, id desc limit 50',
      /bed_forecast_company_id_chance_12_months_id_idx/,
    ],
    ['the order by due day', 'select id from bed_forecast order by due50_day, id limit 50', /bed_forecast_company_id_due50_day_id_idx/],
  ])('%s works the setting out once and walks its index', async (_what, sql, index) => {
    const said = await plan(sql)
    expect(said).toMatch(/InitPlan/)
    expect(said).toMatch(index)
    expect(said).not.toMatch(/Seq Scan|Sort/)
  })
})
