import { AppError } from '@almanac/runtime/errors'
import { appClient, identityClient } from './client.ts'

type Login = { name: string; superuser: boolean; bypass: boolean; owns: number; powerful: string | null }

const QUERY = `
  select current_user as name, r.rolsuper as superuser, r.rolbypassrls as bypass,
    (select count(*)::int from pg_class c join pg_namespace n on n.oid = c.relnamespace
      where n.nspname in ('public', 'queue') and c.relkind in ('r', 'p') and c.relowner = r.oid) as owns,
    (select string_agg(o.rolname, ', ') from pg_roles o
      where o.oid <> r.oid and pg_has_role(r.oid, o.oid, 'MEMBER')
        and (o.rolsuper or o.rolbypassrls or exists (select 1 from pg_class c join pg_namespace n on n.oid = c.relnamespace
          where n.nspname = 'public' and c.relkind = 'r' and c.relowner = o.oid))) as powerful
  from pg_roles r where r.rolname = current_user`

/**
 * Refuses to go on with a login that could pass by row security: a superuser, one with BYPASSRLS, an owner of the tables, or a member of
 * a role that is. Called before the first request is served.
 */
export async function refuseBypassingLogins(): Promise<void> {
  for (const [setting, client] of [
    ['DATABASE_URL', appClient()],
    ['IDENTITY_DATABASE_URL', identityClient()],
  ] as const) {
    const [login] = await client.$queryRawUnsafe<Login[]>(QUERY)
    if (!login) throw new AppError('misconfigured', `${setting}: the login cannot be examined.`)
    const why = login.superuser
      ? 'is a superuser'
      : login.bypass
        ? 'has BYPASSRLS'
        : login.owns > 0
          ? 'owns tables'
          : login.powerful
            ? `is a member of ${login.powerful}, which can pass by row security`
            : undefined
    if (why)
      throw new AppError(
        'misconfigured',
        `${setting}: the login "${login.name}" ${why}, so companies would not be kept apart. The app does not start; give it a login as in scripts/roles.sql.`,
      )
  }
}
