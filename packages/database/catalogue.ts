/** One thing of the database's catalogue and what it is, as text: { thing: 'table public.site', is: 'row security forced; almanac_app: SELECT' }. */
export type CatalogueLine = { thing: string; is: string }

/** Beside the lines stands in which format they are, and that a migrator is at work, or was when it was killed. */
export const FORMAT = 'format'
export const MIGRATING = 'migrating'

/** Raised when CATALOGUE_QUERY says something in another way: what was stored before can then not be compared. */
export const CATALOGUE_FORMAT = '1'

/** What somebody else than the owner may do with a thing; `kind` is that of acldefault. */
const grants = (acl: string, kind: string, owner: string) => `
  coalesce((select string_agg(role || ': ' || rights, ', ' order by role) from (
    select case when g.grantee = 0 then 'everyone' else pg_get_userbyid(g.grantee)::text end as role,
      string_agg(g.privilege_type || case when g.is_grantable then ' and may grant it' else '' end, ' ' order by g.privilege_type) as rights
    from aclexplode(coalesce(${acl}, acldefault('${kind}', ${owner}))) g where g.grantee <> ${owner} group by 1) r), 'no grants')`

/**
 * All of the catalogue that keeps companies apart and holds the promises, over all schemas but PostgreSQL's own, without what belongs to extensions: schemas,
 * tables, views, sequences, grants on columns, policies, functions, rules, triggers, constraints, unique indexes, rights that new things get. Readable by any login.
 */
export const CATALOGUE_QUERY = `
  with space as (select oid, nspname, nspowner, nspacl from pg_namespace
      where nspname not in ('pg_catalog', 'information_schema', 'pg_toast') and nspname !~ '^pg_(toast_)?temp_'),
    foreign_part as (select classid, objid from pg_depend where deptype = 'e'),
    relation as (select c.*, s.nspname || '.' || c.relname as name from pg_class c join space s on s.oid = c.relnamespace
      where c.relkind in ('r', 'p', 'v', 'm', 'f', 'S') and not exists (select from foreign_part f where f.classid = 'pg_class'::regclass and f.objid = c.oid))
  select 'schema ' || nspname as thing, 'of ' || pg_get_userbyid(nspowner) || '; ' || ${grants('nspacl', 'n', 'nspowner')} as "is" from space
  union all
  select case relkind when 'v' then 'view ' when 'm' then 'stored view ' when 'f' then 'foreign table ' when 'S' then 'sequence ' else 'table ' end || name,
    'of ' || pg_get_userbyid(relowner) || '; ' ||
    case when relkind in ('v', 'm') then 'reads with the rights of ' || case when reloptions @> array['security_invoker=true'] then 'who asks' else 'its owner' end
        || '; ' || md5(pg_get_viewdef(oid)) || '; '
      when relkind = 'S' then ''
      when relrowsecurity and relforcerowsecurity then 'row security forced; ' when relrowsecurity then 'row security on; ' else 'row security off; ' end
    || ${grants('relacl', 'r', 'relowner')}
  from relation
  union all
  select 'column ' || r.name || '.' || a.attname, ${grants('a.attacl', 'c', 'r.relowner')}
  from relation r join pg_attribute a on a.attrelid = r.oid where a.attacl is not null and not a.attisdropped
  union all
  select 'policy ' || r.name || '.' || p.polname,
    case p.polcmd when 'r' then 'SELECT' when 'a' then 'INSERT' when 'w' then 'UPDATE' when 'd' then 'DELETE' else 'all commands' end
    || case when p.polpermissive then '' else ', restricting' end || ' for '
    || (select string_agg(case when o = 0 then 'everyone' else pg_get_userbyid(o)::text end, ', ' order by o) from unnest(p.polroles) o)
    || coalesce(' using ' || pg_get_expr(p.polqual, p.polrelid), '') || coalesce(' with check ' || pg_get_expr(p.polwithcheck, p.polrelid), '')
  from pg_policy p join relation r on r.oid = p.polrelid
  union all
  select 'function ' || s.nspname || '.' || p.proname || '(' || pg_get_function_identity_arguments(p.oid) || ')',
    'of ' || pg_get_userbyid(p.proowner) || '; runs with the rights of ' || case when p.prosecdef then 'its owner' else 'who calls' end || '; '
    || coalesce(array_to_string(p.proconfig, ' ') || '; ', '') || l.lanname || ' ' || md5(p.prosrc || coalesce(pg_get_function_sqlbody(p.oid), '')) || '; '
    || ${grants('p.proacl', 'f', 'p.proowner')}
  from pg_proc p join space s on s.oid = p.pronamespace join pg_language l on l.oid = p.prolang
  where not exists (select from foreign_part f where f.classid = 'pg_proc'::regclass and f.objid = p.oid)
  union all
  select 'rule ' || r.name || '.' || w.rulename, pg_get_ruledef(w.oid) from pg_rewrite w join relation r on r.oid = w.ev_class where w.rulename <> '_RETURN'
  union all
  select 'trigger ' || r.name || '.' || t.tgname, pg_get_triggerdef(t.oid) || case when t.tgenabled = 'D' then ' (off)' else '' end
  from pg_trigger t join relation r on r.oid = t.tgrelid where not t.tgisinternal
  union all
  select 'event trigger ' || evtname, evtevent || ' ' || evtfoid::regproc::text || ' ' || evtenabled::text from pg_event_trigger
  union all
  select 'constraint ' || r.name || '.' || k.conname, pg_get_constraintdef(k.oid)
  from pg_constraint k join relation r on r.oid = k.conrelid where k.contype in ('c', 'f', 'x')
  union all
  select 'unique index ' || r.name || '.' || i.relname, pg_get_indexdef(x.indexrelid)
  from pg_index x join relation r on r.oid = x.indrelid join pg_class i on i.oid = x.indexrelid where x.indisunique
  union all
  select 'rights of new things: ' || d.defaclobjtype::text || ' of ' || pg_get_userbyid(d.defaclrole) || coalesce(' in ' || s.nspname, ''), d.defaclacl::text
  from pg_default_acl d left join space s on s.oid = d.defaclnamespace
  order by 1`

/** What differs between the catalogue as it was stored and as it is, a sentence each. */
export function catalogueDifferences(stored: CatalogueLine[], present: CatalogueLine[]): string[] {
  const lines = stored.filter(({ thing }) => thing !== FORMAT && thing !== MIGRATING)
  const [was, is] = [lines, present].map((lines) => new Map(lines.map((line) => [line.thing, line.is]))) as [
    Map<string, string>,
    Map<string, string>,
  ]
  return [...new Set([...was.keys(), ...is.keys()])].sort().flatMap((thing) => {
    const [before, now] = [was.get(thing), is.get(thing)]
    if (before === now) return []
    if (before === undefined) return [`${thing} was not there (${now})`]
    if (now === undefined) return [`${thing} is gone (${before})`]
    return [`${thing} was “${before}” and is “${now}”`]
  })
}

const SHOWN = 8

/** The differences in one sentence, the first of them in full. */
export function tellDifferences(differences: string[]): string {
  const more = differences.length > SHOWN ? ` And ${differences.length - SHOWN} more.` : ''
  return (
    `The database is not as its migrations left it, so companies may not be kept apart: ${differences.slice(0, SHOWN).join('. ')}.${more} ` +
    'Nothing was changed. Put it back; or, if you changed it yourself and know why, start once with ACCEPT_CATALOGUE=on.'
  )
}
