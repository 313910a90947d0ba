import { AppError } from '@almanac/runtime/errors'
import { appClient, identityClient } from './client.ts'
import { TABLES } from './tables.ts'

/** What PostgreSQL says of a login and of every role it may become: whether it is one of them, or a member. */
type Login = {
  name: string
  database: string
  powers: string[]
  temporary: boolean
  identity: string[]
  tenant: string[]
}

const QUERY = `
  with me as (select * from pg_roles where rolname = current_user),
    role as (select r.*, r.oid = me.oid as self from pg_roles r, me where r.oid = me.oid or (not me.rolsuper and pg_has_role(me.oid, r.oid, 'MEMBER'))),
    space as (select oid, nspname, nspowner from pg_namespace where nspname not in ('pg_catalog', 'information_schema', 'pg_toast') and nspname !~ '^pg_(toast_)?temp_'),
    power as (
      select self, rolname, what from role, lateral (values
        (rolsuper, 'is a superuser'), (rolbypassrls, 'has BYPASSRLS'), (rolcreaterole, 'may make roles (CREATEROLE)'), (rolcreatedb, 'may make databases (CREATEDB)'),
        (rolreplication, 'may read all files by replication (REPLICATION)')) p(has, what) where has
      union all select false, rolname, 'has rights over the whole server' from role where rolname ~ '^pg_' and rolname <> 'pg_database_owner' and not self),
    owning as (
      select datdba as owner, 'the database' as what from pg_database where datname = current_database()
      union all select nspowner, 'schema ' || nspname from space
      union all select c.relowner, 'tables' from pg_class c join space s on s.oid = c.relnamespace
      union all select p.proowner, 'functions' from pg_proc p join space s on s.oid = p.pronamespace)
  select current_user as name, current_database() as database,
    array(select case when self then '' else 'is a member of ' || rolname || ', which ' end || what from (
      select self, rolname, what from power
      union all select r.self, r.rolname, 'owns ' || string_agg(distinct o.what, ', ' order by o.what) from owning o join role r on r.oid = o.owner group by 1, 2
    ) reasons order by not self, what !~ 'superuser', what) as powers,
    has_database_privilege(current_database(), 'TEMPORARY') as temporary,
    array(select t from unnest($1::text[]) t where to_regclass('public.' || t) is not null and has_table_privilege('public.' || t, 'SELECT')) as identity,
    array(select t from unnest($2::text[]) t where to_regclass('public.' || t) is not null and has_table_privilege('public.' || t, 'SELECT')) as tenant`

const ROLES = 'Give it a login as in scripts/roles.sql.'

/** Why companies would not be kept apart with this login, as what follows its name; undefined when they would. */
function whatIsWrong(login: Login, setting: string): string | undefined {
  if (login.powers.length > 0)
    return `${login.powers.slice(0, 3).join(', ')}, so companies would not be kept apart. The app does not start. ${ROLES}`
  const [reads, whose, other] =
    setting === 'DATABASE_URL' ? [login.identity, 'sign-in', 'IDENTITY_DATABASE_URL'] : [login.tenant, 'the companies', 'DATABASE_URL']
  if (reads.length)
    return `may read the tables of ${whose} (${reads[0]}): it is that of ${other}, or has its rights. The app does not start. Give each its own. ${ROLES}`
  if (login.temporary)
    return (
      'may make temporary tables, which would be found before the app’s own. The app does not start. ' +
      `As the owner of the database: REVOKE TEMPORARY ON DATABASE "${login.database}" FROM PUBLIC`
    )
  return undefined
}

/**
 * Refuses to go on with a login that could pass by row security: one with rights over server, roles or files, an owner of database, schema, tables or
 * functions, a member of such a role, one that reads what only the other login may, or one that may make temporary tables. Called before the first request is
 * served. With `unmigrated`, rights that the next migration takes away do not count.
 */
export async function refuseBypassingLogins({ unmigrated = false } = {}): Promise<void> {
  const ask = async (client: ReturnType<typeof appClient>) =>
    (await client.$queryRawUnsafe<Login[]>(QUERY, [...TABLES.identity], [...TABLES.tenant]))[0]
  for (const [setting, client] of [
    ['DATABASE_URL', appClient()],
    ['IDENTITY_DATABASE_URL', identityClient()],
  ] as const) {
    const login = await ask(client)
    if (!login) throw new AppError('misconfigured', `${setting}: the login cannot be examined.`)
    const wrong = whatIsWrong({ ...login, temporary: login.temporary && !unmigrated }, setting)
    if (wrong) throw new AppError('misconfigured', `${setting}: the login "${login.name}" ${wrong}`)
  }
}
