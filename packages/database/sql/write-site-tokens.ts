import type { Tx } from '../client.ts'

/** Makes `pairs` the search tokens of these sites. Only the difference is written: most edits change a word or none, and open searches keep their rows. */
export async function writeSiteTokens(
  tx: Tx,
  companyId: string,
  siteIds: string[],
  pairs: { tokens: string[]; siteIds: string[] },
): Promise<void> {
  await tx.$executeRaw`
    with wanted as (select token, site_id from unnest(${pairs.tokens}::text[], ${pairs.siteIds}::uuid[]) as t (token, site_id))
    delete from search_token s where s.company_id = ${companyId}::uuid and s.site_id = any(${siteIds}::uuid[])
      and not exists (select from wanted w where w.site_id = s.site_id and w.token = s.token collate "C")`
  await tx.$executeRaw`
    insert into search_token (company_id, token, site_id)
    select ${companyId}::uuid, token, site_id from unnest(${pairs.tokens}::text[], ${pairs.siteIds}::uuid[]) as t (token, site_id)
    on conflict do nothing`
}
