import type { Tx } from '../client.ts'

/** What hangs on a thing of a batch since, by its first such reason. */
export type TouchedBy =
  | 'job'
  | 'agreement'
  | 'valve'
  | 'pre-treatment'
  | 'water-test'
  | 'tank'
  | 'bed'
  | 'inspection'
  | 'reminder'
  | 'softener'
  | 'contact'
  | 'changed-contact'
  | 'tenure'
  | 'site'

/** Whether each thing of a batch was touched since: changed, or something else hangs on it now. */
export type TouchedThings = Record<'softeners' | 'sites' | 'customers', Map<string, TouchedBy>>

type Found = { id: string; why: TouchedBy | null }

/**
 * Softeners, sites and customers that something outside the batch hangs on: jobs, reminders sent, inspections, equipment, contacts or tests written down
 * since. Each with the first reason.
 */
export async function readTouched(
  tx: Tx,
  companyId: string,
  batchId: string,
  ids: { softeners: string[]; sites: string[]; customers: string[] },
): Promise<TouchedThings> {
  const softeners = await tx.$queryRaw<Found[]>`
    select o.id, case
      when exists (select from job j where j.company_id = o.company_id and j.softener_id = o.id) then 'job'
      when exists (select from agreement a where a.company_id = o.company_id and a.softener_id = o.id) then 'agreement'
      when exists (select from valve v where v.company_id = o.company_id and v.softener_id = o.id and v.archived_at is null) then 'valve'
      when exists (select from pre_treatment p where p.company_id = o.company_id and p.softener_id = o.id and p.archived_at is null) then 'pre-treatment'
      when exists (select from water_test w where w.company_id = o.company_id and w.softener_id = o.id and w.withdrawn_at is null
        and w.batch_id is distinct from ${batchId}::uuid) then 'water-test'
      when exists (select from tank t where t.company_id = o.company_id and t.softener_id = o.id and t.archived_at is null
        and t.batch_id is distinct from ${batchId}::uuid) then 'tank'
      when exists (select from tank t join bed b on b.company_id = t.company_id and b.tank_id = t.id where t.company_id = o.company_id and t.softener_id = o.id
        and b.archived_at is null and b.batch_id is distinct from ${batchId}::uuid) then 'bed'
      when exists (select from tank t join bed b on b.company_id = t.company_id and b.tank_id = t.id
        join inspection i on i.company_id = b.company_id and i.bed_id = b.id where t.company_id = o.company_id and t.softener_id = o.id) then 'inspection'
      end as why
    from softener o where o.company_id = ${companyId}::uuid and o.id = any(${ids.softeners}::uuid[])`
  const sites = await tx.$queryRaw<Found[]>`
    select s.id, case
      when exists (select from job j where j.company_id = s.company_id and j.site_id = s.id) then 'job'
      when exists (select from agreement a where a.company_id = s.company_id and a.site_id = s.id) then 'agreement'
      when exists (select from reminder r where r.company_id = s.company_id and r.site_id = s.id and r.state = 'released') then 'reminder'
      when exists (select from water_test w where w.company_id = s.company_id and w.site_id = s.id and w.withdrawn_at is null
        and w.batch_id is distinct from ${batchId}::uuid) then 'water-test'
      when exists (select from softener o where o.company_id = s.company_id and o.site_id = s.id and o.archived_at is null
        and o.batch_id is distinct from ${batchId}::uuid) then 'softener'
      when exists (select from contact c where c.company_id = s.company_id and c.site_id = s.id and c.archived_at is null) then 'contact'
      when exists (select from tenure t where t.company_id = s.company_id and t.site_id = s.id and (t.to_day is not null or t.version > 1)) then 'tenure'
      end as why
    from site s where s.company_id = ${companyId}::uuid and s.id = any(${ids.sites}::uuid[])`
  const customers = await tx.$queryRaw<Found[]>`
    select c.id, case
      when exists (select from contact p where p.company_id = c.company_id and p.customer_id = c.id and p.archived_at is null
        and (p.batch_id is distinct from ${batchId}::uuid or p.version > 1)) then 'changed-contact'
      when exists (select from tenure t join site s on s.company_id = t.company_id and s.id = t.site_id where t.company_id = c.company_id and t.customer_id = c.id
        and s.archived_at is null and s.batch_id is distinct from ${batchId}::uuid) then 'site'
      end as why
    from customer c where c.company_id = ${companyId}::uuid and c.id = any(${ids.customers}::uuid[])`
  const byId = (found: Found[]) => new Map(found.flatMap(({ id, why }) => (why === null ? [] : [[id, why] as const])))
  return { softeners: byId(softeners), sites: byId(sites), customers: byId(customers) }
}

const CHUNK = 5000

/** The present rows of some things, by id, their days as Date. Archived ones are left out. */
export async function readThings(
  tx: Tx,
  companyId: string,
  kind: 'customer' | 'contact' | 'site' | 'softener' | 'tank' | 'bed' | 'test',
  ids: readonly string[],
): Promise<Map<string, { id: string; version: number } & Record<string, unknown>>> {
  const found = new Map<string, { id: string; version: number } & Record<string, unknown>>()
  for (let start = 0; start < ids.length; start += CHUNK) {
    const where = { companyId, id: { in: ids.slice(start, start + CHUNK) }, archivedAt: null }
    const { archivedAt: _, ...open } = where
    const rows =
      kind === 'customer'
        ? await tx.customer.findMany({ where })
        : kind === 'contact'
          ? await tx.contact.findMany({ where, include: { consents: { select: { channel: true, granted: true } } } })
          : kind === 'site'
            ? await tx.site.findMany({ where })
            : kind === 'softener'
              ? await tx.softener.findMany({ where })
              : kind === 'tank'
                ? await tx.tank.findMany({ where })
                : kind === 'bed'
                  ? await tx.bed.findMany({ where })
                  : await tx.waterTest.findMany({ where: { ...open, withdrawnAt: null } })
    for (const row of rows) found.set(row.id, row)
  }
  return found
}
