import type pg from 'pg'
import { findingsElsewhere } from './catalogue-elsewhere.ts'

/** The tables by kind, as packages/database/tables.ts lists them. */
export type KnownTables = { global: readonly string[]; identity: readonly string[]; tenant: readonly string[] }

/** What the documents promise: who may be changed or removed, beside the read and add that every tenant table has. */
export const APPEND_ONLY = [
  'agreement_term',
  'owner_decision',
  'inspection',
  'movement',
  'forecast_change',
  'forecast_backtest',
  'forecast_plan',
  'applied_command',
  'audit_entry',
]
export const REMOVABLE = [
  'search_token',
  'bed_forecast',
  'forecast_draft',
  'forecast_group',
  'forecast_month',
  'import_file_piece',
  'planned_rebed',
  'crew_day_member',
]

/** The migrations' own record, made by the migration engine. */
const NOT_OURS = ['_prisma_migrations']
const LOGINS = ['almanac_app', 'almanac_app_login', 'almanac_identity', 'almanac_identity_login']

/** A comparison with the setting inside a sub-select, so that it is worked out once a query and not once a row. */
const MINE = /^\(company_id = \( SELECT \(NULLIF\(current_setting\('app\.company_id'::text, true\), ''::text\)\)::uuid AS "?nullif"?\)\)$/

const COMMANDS = {
  SELECT: { qual: true, check: false },
  INSERT: { qual: false, check: true },
  UPDATE: { qual: true, check: true },
  DELETE: { qual: true, check: false },
}

async function tableFindings(db: pg.Client, known: KnownTables): Promise<string[]> {
  const { rows } = await db.query<{ name: string; enabled: boolean; forced: boolean }>(
    `select relname as name, relrowsecurity as enabled, relforcerowsecurity as forced from pg_class
     where relnamespace = 'public'::regnamespace and relkind in ('r', 'p', 'f') order by 1`,
  )
  const listed = [...known.global, ...known.identity, ...known.tenant, ...NOT_OURS]
  const present = rows.map((row) => row.name)
  return [
    ...present.filter((name) => !listed.includes(name)).map((name) => `${name}: in the database, but of no kind in tables.ts`),
    ...listed.filter((name) => !present.includes(name)).map((name) => `${name}: in tables.ts, but not in the database`),
    ...rows
      .filter((row) => !known.global.includes(row.name) && !known.identity.includes(row.name) && !NOT_OURS.includes(row.name))
      .flatMap((row) => [
        ...(row.enabled ? [] : [`${row.name}: row security is not enabled`]),
        ...(row.forced ? [] : [`${row.name}: row security is not forced`]),
      ]),
    ...rows.filter((row) => known.global.includes(row.name) && !row.enabled).map((row) => `${row.name}: row security is not enabled`),
  ]
}

type Policy = { table: string; policy: string; kind: string; cmd: keyof typeof COMMANDS; qual: string | null; check: string | null }

async function policyFindings(db: pg.Client, known: KnownTables): Promise<string[]> {
  const { rows } = await db.query<Policy>(
    `select tablename as "table", policyname as policy, permissive as kind, cmd, qual, with_check as "check" from pg_policies where schemaname = 'public'`,
  )
  return known.tenant.flatMap((table) => {
    const mine = rows.filter((row) => row.table === table)
    const commands = mine.map((row) => row.cmd).sort()
    const wrong = mine.flatMap((row) => {
      const wants = COMMANDS[row.cmd]
      if (!wants) return [`${table}: policy ${row.policy} is for ${row.cmd}, not for one command`]
      const clause = (text: string | null, wanted: boolean, word: string) =>
        wanted
          ? MINE.test(text ?? '')
            ? []
            : [`${table}: ${word} of policy ${row.policy} does not compare the company with the setting: ${text}`]
          : text === null
            ? []
            : [`${table}: policy ${row.policy} has a ${word} it does not need`]
      return [...clause(row.qual, wants.qual, 'USING'), ...clause(row.check, wants.check, 'WITH CHECK')]
    })
    const each = commands.join() === 'DELETE,INSERT,SELECT,UPDATE' ? [] : [`${table}: policies for ${commands.join(', ') || 'no command'}`]
    return [...each, ...wrong]
  })
}

async function keyFindings(db: pg.Client, known: KnownTables): Promise<string[]> {
  const { rows: keys } = await db.query<{ table: string; index: string; what: string; first: string | null }>(
    `select c.relname as "table", i.relname as index, a.attname as first,
       case when x.indisprimary then 'primary key' when x.indisexclusion then 'exclusion' else 'unique' end as what
     from pg_index x join pg_class c on c.oid = x.indrelid join pg_class i on i.oid = x.indexrelid
     left join pg_attribute a on a.attrelid = c.oid and a.attnum = x.indkey[0]
     where c.relnamespace = 'public'::regnamespace and (x.indisunique or x.indisprimary or x.indisexclusion)`,
  )
  const { rows: links } = await db.query<{ table: string; name: string; columns: string[]; referenced: string[]; to: string }>(
    `select k.conrelid::regclass::text as "table", k.conname as name, k.confrelid::regclass::text as "to",
       array(select a.attname::text from unnest(k.conkey) with ordinality n(num, place) join pg_attribute a on a.attrelid = k.conrelid and a.attnum = n.num order by place) as columns,
       array(select a.attname::text from unnest(k.confkey) with ordinality n(num, place) join pg_attribute a on a.attrelid = k.confrelid and a.attnum = n.num order by place) as referenced
     from pg_constraint k where k.contype = 'f' and k.connamespace = 'public'::regnamespace`,
  )
  const primary = keys.filter((key) => key.what === 'primary key').map((key) => key.table)
  return [
    ...known.tenant.filter((table) => !primary.includes(table)).map((table) => `${table}: has no primary key`),
    ...keys
      .filter((key) => known.tenant.includes(key.table) && key.first !== 'company_id')
      .map((key) => `${key.table}: ${key.what} ${key.index} begins with ${key.first}, not with company_id`),
    ...links
      .filter((link) => known.tenant.includes(link.table) && known.tenant.includes(link.to))
      .filter((link) => link.columns[0] !== 'company_id' || link.referenced[0] !== 'company_id')
      .map((link) => `${link.table}: foreign key ${link.name} to ${link.to} does not carry company_id`),
  ]
}

async function grantFindings(db: pg.Client, known: KnownTables): Promise<string[]> {
  const { rows } = await db.query<{ table: string; role: string; grant: string }>(
    `select c.relname as "table", r.role, g.grant from pg_class c, unnest($1::text[]) r(role),
       unnest(array['SELECT','INSERT','UPDATE','DELETE','TRUNCATE','REFERENCES','TRIGGER']) g("grant")
     where c.relnamespace = 'public'::regnamespace and c.relkind in ('r', 'p', 'v', 'm')
       and (has_table_privilege(r.role, c.oid, g.grant) or (g.grant in ('SELECT', 'INSERT', 'UPDATE', 'REFERENCES') and has_any_column_privilege(r.role, c.oid, g.grant)))`,
    [['almanac_app_login', 'almanac_identity_login']],
  )
  const has = (role: string, table: string) => rows.filter((row) => row.role === role && row.table === table).map((row) => row.grant)
  const allowed = (table: string) =>
    APPEND_ONLY.includes(table) ? ['SELECT', 'INSERT'] : ['SELECT', 'INSERT', 'UPDATE', ...(REMOVABLE.includes(table) ? ['DELETE'] : [])]
  const differ = (a: string[], b: string[]) => [...a].sort().join() !== [...b].sort().join()
  const say = (table: string, whose: string, grants: string[]) => `${table}: the ${whose} login has ${grants.join(', ') || 'no grant'}`
  return [
    ...known.tenant
      .filter((table) => differ(has('almanac_app_login', table), allowed(table)))
      .map((t) => say(t, 'app', has('almanac_app_login', t))),
    ...known.tenant
      .filter((table) => has('almanac_identity_login', table).length)
      .map((t) => say(t, 'identity', has('almanac_identity_login', t))),
    ...[...known.identity, ...NOT_OURS]
      .filter((t) => has('almanac_app_login', t).length)
      .map((t) => say(t, 'app', has('almanac_app_login', t))),
    ...known.global
      // Of the companies a few columns change; the settings' own tests say which.
      .filter((table) => differ(has('almanac_app_login', table), table === 'company' ? ['SELECT', 'UPDATE'] : ['SELECT']))
      .map((t) => say(t, 'app', has('almanac_app_login', t))),
  ]
}

async function powerFindings(db: pg.Client): Promise<string[]> {
  const { rows: owned } = await db.query<{ role: string; what: string }>(
    `select r.rolname as role, o.what from pg_roles r join (
       select relowner as owner, relname::text as what from pg_class union all select proowner, proname::text from pg_proc
       union all select nspowner, nspname::text from pg_namespace union all select typowner, typname::text from pg_type) o on o.owner = r.oid
     where r.rolname = any($1) order by 1, 2`,
    [LOGINS],
  )
  const { rows: roles } = await db.query<{ role: string }>(
    `select rolname as role from pg_roles where rolname = any($1) and (rolsuper or rolbypassrls or rolcreaterole or rolcreatedb)`,
    [LOGINS],
  )
  return [
    ...owned.map((row) => `${row.role}: owns ${row.what}`),
    ...roles.map((row) => `${row.role}: may pass by row security or make roles`),
  ]
}

/** Everything in the database's catalogue that would let companies mix, as sentences; empty when all is as promised. `db` as superuser. */
export async function catalogueFindings(db: pg.Client, known: KnownTables): Promise<string[]> {
  return [
    ...(await tableFindings(db, known)),
    ...(await policyFindings(db, known)),
    ...(await keyFindings(db, known)),
    ...(await grantFindings(db, known)),
    ...(await powerFindings(db)),
    ...(await findingsElsewhere(db, known.global)),
  ]
}
