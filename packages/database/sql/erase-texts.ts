import type { Tx } from '../client.ts'

/** A row that a search for a person changed. */
export type ErasedIn = { table: string; id: string }

/** Takes what matches out of every text of the company in scope; only of rows that are or name one of `within`, where it is given. `hints`: LIKE patterns, one of which fits the lower-case text of whatever matches. */
export async function eraseTexts(
  tx: Tx,
  { pattern, hints }: { pattern: string; hints: readonly string[] },
  within: readonly string[] | null,
): Promise<ErasedIn[]> {
  return tx.$queryRaw<ErasedIn[]>`
    select changed_table as "table", changed_id as id
    from almanac_erase_texts(${pattern}, ${within === null ? null : [...within]}::uuid[], ${[...hints]}::text[])`
}

/** Every record that hangs on a customer: their contacts and messages, the sites they hold or held with what stands and was done there. Ids. */
export async function recordsAround(tx: Tx, companyId: string, customerId: string): Promise<string[]> {
  const rows = await tx.$queryRaw<{ id: string }[]>`
    with mine as (select site_id as id from tenure where company_id = ${companyId}::uuid and customer_id = ${customerId}::uuid),
    units as (select id from softener where company_id = ${companyId}::uuid and site_id in (select id from mine)),
    work as (select id from job where company_id = ${companyId}::uuid and site_id in (select id from mine))
    select ${customerId}::uuid as id
    union select id from contact where company_id = ${companyId}::uuid and customer_id = ${customerId}::uuid
    union select id from mine union select id from units union select id from work
    union select id from tank where company_id = ${companyId}::uuid and softener_id in (select id from units)
    union select b.id from bed b join tank t on t.company_id = b.company_id and t.id = b.tank_id
      where b.company_id = ${companyId}::uuid and t.softener_id in (select id from units)
    union select id from agreement where company_id = ${companyId}::uuid and site_id in (select id from mine)
    union select id from visit where company_id = ${companyId}::uuid and job_id in (select id from work)
    union select r.id from import_row r where r.company_id = ${companyId}::uuid and (r.customer_id = ${customerId}::uuid or r.site_id in (select id from mine))`
  return rows.map((row) => row.id)
}
