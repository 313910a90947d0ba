import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'

/**
 * Of a firm: a site with a softener and nothing to be done there, a contact who is not the customer, a visit that was closed; and a
 * customer, a site and a softener that were archived. Their ids.
 */
export async function makeArchivedThings(db: pg.Client, companyId: string, idleSiteOf: string) {
  const ids = {
    idleSiteId: newId(),
    idleSoftenerId: newId(),
    archivedCustomerId: newId(),
    archivedSiteId: newId(),
    archivedSoftenerId: newId(),
    spareContactId: newId(),
    closedVisitId: newId(),
  }
  const gone = `'2026-10-01T00:00:00Z', 'twice'`
  await db.query(`insert into site (company_id, id, label) values ($1, $2, 'Idle Row 1')`, [companyId, ids.idleSiteId])
  await db.query(`insert into softener (company_id, id, site_id, label) values ($1, $2, $3, 'Idle')`, [
    companyId,
    ids.idleSoftenerId,
    ids.idleSiteId,
  ])
  await db.query(`insert into customer (company_id, id, name, archived_at, archive_reason) values ($1, $2, 'Cora Dell', ${gone})`, [
    ...[companyId, ids.archivedCustomerId],
  ])
  await db.query(`insert into site (company_id, id, label, archived_at, archive_reason) values ($1, $2, 'Gone Row 1', ${gone})`, [
    ...[companyId, ids.archivedSiteId],
  ])
  await db.query(
    `insert into softener (company_id, id, site_id, label, archived_at, archive_reason) values ($1, $2, $3, 'Gone', ${gone})`,
    [...[companyId, ids.archivedSoftenerId, idleSiteOf]],
  )
  await db.query(
    `insert into contact (company_id, id, customer_id, role, name) select company_id, $2, id, 'occupier', 'Cora Dell' from customer where company_id = $1 and name = 'Otis Brand'`,
    [companyId, ids.spareContactId],
  )
  const closedJobId = newId()
  await db.query(
    `insert into job (company_id, id, site_id, kind, state, minutes, crew_size, created_at, closed_day) values ($1, $2, $3, 'annual-visit', 'closed', 40, 1, '2026-11-02T16:00:00Z', '2026-11-20')`,
    [companyId, closedJobId, idleSiteOf],
  )
  await db.query(
    `insert into visit (company_id, id, job_id, crew_day_id, starts_at, ends_at, state, outcome, close_out, closed_at)
     select company_id, $2, $3, id, starts_at, starts_at + interval '40 minutes', 'closed', 'done', '{}', starts_at + interval '40 minutes' from crew_day where company_id = $1 order by day, id limit 1`,
    [companyId, ids.closedVisitId, closedJobId],
  )
  return ids
}
