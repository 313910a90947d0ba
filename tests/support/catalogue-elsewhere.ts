import type pg from 'pg'

/** The schemas that the project knows: its own tables, and the task queue's. */
const SCHEMAS = ['public', 'queue']
/** The queue library's tables (pg-boss), by what its schema of this version makes; a day's statistics lie in a part of their own. */
const QUEUE_TABLES = /^(subscription|bam|version|queue|schedule|job|job_common|job_dependency|warning|instance|queue_stats(_\d{8})?)$/

/** The only functions that may look across companies or make one, and the md5 of what they do: whoever replaces one has to say so here. */
const ACROSS_COMPANIES: Record<string, string> = {
  /** Ids and nothing else. */
  'public.almanac_company_ids': '8d0a2a2efc2d496a38f522707f8443d3',
  /** Erases the company in scope, once its own day has come, and its people's sign-in with it; of others it sees nothing. */
  'public.almanac_erase_company': '1e0b50a846fd81714e792970ca318488',
  /** Takes a name out of texts of the company in scope, as the tables' owner under its row security; across companies it sees nothing. */
  'public.almanac_erase_texts': '86a400f7d1c6c44917e7ef4dc300b871',
  /** Removes what happened to people's ways in more than a year ago, and answers nothing. */
  'public.almanac_forget_identity_events': '940912371434d2d6ac4605a91ed5a68f',
  /** Founds a company by a set-up link that works, once, and answers whether it did. */
  'public.almanac_found_company': 'b9e7b6caa9e720f10875ea495a1314c4',
  /** Tells the people of a company that closes, by their ids, that their place is to be looked at again. */
  'public.almanac_tell_closing': '4bd0525e4773d1b006174d358be2474f',
  /** The figures of fits between firms that both chose to learn together. */
  'public.almanac_pooled_fits': '5b4c929444ec9311a533145d881d4ab9',
}

const IN_SCOPE = `(id = ( SELECT (NULLIF(current_setting('app.company_id'::text, true), ''::text))::uuid AS "nullif"))`
/** What each global table is: whom its policies let see what, and that no row of it belongs to a company other than the row's own. */
const GLOBAL: Record<string, string[]> = {
  company: [`SELECT almanac_app ${IN_SCOPE} -`, 'SELECT almanac_identity (id IS NOT NULL) -', `UPDATE almanac_app ${IN_SCOPE} ${IN_SCOPE}`],
  catalogue_as_migrated: ['SELECT almanac_app,almanac_identity (thing IS NOT NULL) -'],
}

const ALL_SCHEMAS = `select oid, nspname from pg_namespace where nspname not in ('pg_catalog', 'information_schema', 'pg_toast') and nspname !~ '^pg_(toast_)?temp_'`

async function placeFindings(db: pg.Client): Promise<string[]> {
  const { rows: schemas } = await db.query<{ name: string }>(`select nspname as name from (${ALL_SCHEMAS}) s`)
  const { rows: relations } = await db.query<{ schema: string; name: string; kind: string }>(
    `select s.nspname as schema, c.relname as name, c.relkind as kind from pg_class c join (${ALL_SCHEMAS}) s on s.oid = c.relnamespace
     where c.relkind in ('r', 'p', 'v', 'm', 'f', 'S')`,
  )
  return [
    ...schemas.filter(({ name }) => !SCHEMAS.includes(name)).map(({ name }) => `${name}: a schema that nobody knows`),
    ...relations
      .filter(({ schema, name }) => schema !== 'public' && !(schema === 'queue' && QUEUE_TABLES.test(name)))
      .map(({ schema, name }) => `${schema}.${name}: a table or view outside the schema that is checked`),
    ...relations
      .filter(({ schema, kind }) => schema === 'public' && kind === 'S')
      .map(({ name }) => `${name}: a sequence, which tells each company how much the others do`),
  ]
}

async function powerFindings(db: pg.Client): Promise<string[]> {
  const { rows: functions } = await db.query<{ name: string; does: string }>(
    `select s.nspname || '.' || p.proname as name, md5(p.prosrc) as does from pg_proc p join (${ALL_SCHEMAS}) s on s.oid = p.pronamespace where p.prosecdef`,
  )
  const { rows: views } = await db.query<{ name: string }>(
    `select s.nspname || '.' || c.relname as name from pg_class c join (${ALL_SCHEMAS}) s on s.oid = c.relnamespace
     where c.relkind = 'm' or (c.relkind = 'v' and not coalesce(c.reloptions @> array['security_invoker=true'], false))`,
  )
  const { rows: rules } = await db.query<{ name: string; rule: string }>(
    `select s.nspname || '.' || c.relname as name, w.rulename as rule from pg_rewrite w join pg_class c on c.oid = w.ev_class
     join (${ALL_SCHEMAS}) s on s.oid = c.relnamespace where w.rulename <> '_RETURN'`,
  )
  return [
    ...functions.filter(({ name }) => !ACROSS_COMPANIES[name]).map(({ name }) => `${name}(): runs with its owner's rights`),
    ...functions
      .filter(({ name, does }) => ACROSS_COMPANIES[name] && ACROSS_COMPANIES[name] !== does)
      .map(({ name }) => `${name}(): looks across companies, and does something else than what was agreed on`),
    ...views.map(({ name }) => `${name}: a view that reads with its owner's rights`),
    ...rules.map(({ name, rule }) => `${name}: rule ${rule} does something else than what was asked`),
  ]
}

async function globalFindings(db: pg.Client, global: readonly string[]): Promise<string[]> {
  const { rows: policies } = await db.query<{ table: string; policy: string }>(
    `select tablename as "table", concat_ws(' ', cmd, array_to_string(roles, ','), coalesce(qual, '-'), coalesce(with_check, '-')) as policy
     from pg_policies where schemaname = 'public' order by 2`,
  )
  const { rows: columns } = await db.query<{ table: string; column: string }>(
    `select c.relname as "table", a.attname as "column" from pg_attribute a join pg_class c on c.oid = a.attrelid
     where c.relnamespace = 'public'::regnamespace and a.attnum > 0 and not a.attisdropped and a.atttypid = 'uuid'::regtype`,
  )
  return global.flatMap((table) => {
    const wanted = [...(GLOBAL[table] ?? [])].sort()
    const found = policies.filter((row) => row.table === table).map((row) => row.policy)
    const ids = columns.filter((row) => row.table === table && !(table === 'company' && row.column === 'id'))
    return [
      ...(GLOBAL[table] ? [] : [`${table}: listed as global, but nobody said what it is`]),
      ...(found.sort().join() === wanted.join() ? [] : [`${table}: a global table with the policies ${found.join('; ') || 'of none'}`]),
      ...ids.map(({ column }) => `${table}: ${column} of a global table names a record, which belongs to a company`),
    ]
  })
}

/** What the catalogue holds beside the known tables of the one schema: other schemas, powerful functions and views, rules, and global tables that are none. */
export async function findingsElsewhere(db: pg.Client, global: readonly string[]): Promise<string[]> {
  return [...(await placeFindings(db)), ...(await powerFindings(db)), ...(await globalFindings(db, global))]
}
