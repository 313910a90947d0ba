import type { AuditRow } from '@almanac/contract/audit'
import { notFound } from '@almanac/runtime/errors'
import type { Tx } from '../client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { cursorOf, readCursor } from './page-key.ts'

type Stored = { field: string; from?: AuditRow['changes'][number]['from']; to?: AuditRow['changes'][number]['to'] }
type Detail = { changes?: Stored[]; field?: string; from?: Stored['from']; to?: Stored['to']; note?: string | null; reason?: string | null }

/** Every record of a site: the site itself, what stands there, who holds or held it and how they are reached, and what was done there. */
async function recordsOfSite(tx: Tx, companyId: string, siteId: string): Promise<string[]> {
  const site = await tx.site.findFirst({
    where: { companyId, id: siteId },
    select: {
      tenures: { select: { customer: { select: { id: true, contacts: { select: { id: true, consents: { select: { id: true } } } } } } } },
      softeners: { select: { id: true, preTreatments: { select: { id: true } }, tanks: { select: { beds: { select: { id: true } } } } } },
      jobs: { select: { id: true, visits: { select: { id: true } }, offers: { select: { id: true } } } },
      waterTests: { select: { id: true } },
      reminders: { select: { id: true } },
      calls: { select: { id: true } },
      callBacks: { select: { id: true } },
      agreements: { select: { id: true } },
    },
  })
  if (!site) throw notFound('site')
  const customers = site.tenures.map((one) => one.customer)
  const contacts = customers.flatMap((one) => one.contacts)
  const ids = (rows: { id: string }[]) => rows.map((row) => row.id)
  return [
    siteId,
    ...ids(customers),
    ...ids(contacts),
    ...contacts.flatMap((one) => ids(one.consents)),
    ...ids(site.softeners),
    ...site.softeners.flatMap((one) => [...ids(one.preTreatments), ...one.tanks.flatMap((tank) => ids(tank.beds))]),
    ...ids(site.jobs),
    ...site.jobs.flatMap((one) => [...ids(one.visits), ...ids(one.offers)]),
    ...ids(site.waterTests),
    ...ids(site.reminders),
    ...ids(site.calls),
    ...ids(site.callBacks),
    ...ids(site.agreements),
  ]
}

/** Which site a record of the trail belongs to, for those that belong to one. */
async function sitesOf(tx: Tx, companyId: string, ids: string[]): Promise<Map<string, { id: string; label: string }>> {
  const where = { companyId, id: { in: ids } }
  const site = { select: { id: true, label: true } }
  const [sites, softeners, beds, jobs, visits, calls, callBacks, agreements] = [
    await tx.site.findMany({ where, ...site }),
    await tx.softener.findMany({ where, select: { id: true, site } }),
    await tx.bed.findMany({ where, select: { id: true, tank: { select: { softener: { select: { site } } } } } }),
    await tx.job.findMany({ where, select: { id: true, site } }),
    await tx.visit.findMany({ where, select: { id: true, job: { select: { site } } } }),
    await tx.phoneCall.findMany({ where, select: { id: true, site } }),
    await tx.callBack.findMany({ where, select: { id: true, site } }),
    await tx.agreement.findMany({ where, select: { id: true, site } }),
  ]
  return new Map([
    ...sites.map((one) => [one.id, one] as const),
    ...softeners.map((one) => [one.id, one.site] as const),
    ...beds.flatMap((one) => (one.tank.softener ? [[one.id, one.tank.softener.site] as const] : [])),
    ...jobs.map((one) => [one.id, one.site] as const),
    ...visits.map((one) => [one.id, one.job.site] as const),
    ...agreements.map((one) => [one.id, one.site] as const),
    ...[...calls, ...callBacks].flatMap((one) => (one.site ? [[one.id, one.site] as const] : [])),
  ])
}

function changesIn(detail: Detail): AuditRow['changes'] {
  const all =
    detail.changes ?? (detail.field === undefined ? [] : [{ field: detail.field, from: detail.from ?? null, to: detail.to ?? null }])
  return all.map(({ field, from, to }) => ({ field, known: from !== undefined || to !== undefined, from: from ?? null, to: to ?? null }))
}

/** Who changed what, newest first; `nameOf` tells who a person is. Of one site and everything there where it is given. */
export async function readAudit(
  scope: Pick<Scope, 'companyId'>,
  query: { siteId?: string; limit: number; cursor?: string },
  nameOf: (personId: string) => string | null,
): Promise<{ rows: AuditRow[]; nextCursor: string | null }> {
  const { companyId } = scope
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  return inCompany(scope, async (tx) => {
    const about = query.siteId ? { entityId: { in: await recordsOfSite(tx, companyId, query.siteId) } } : {}
    const found = await tx.auditEntry.findMany({
      // Ids are made in order of time.
      where: { companyId, ...about, ...(after ? { id: { lt: after.id } } : {}) },
      orderBy: { id: 'desc' },
      take: query.limit + 1,
    })
    const rows = found.slice(0, query.limit)
    const sites = await sitesOf(tx, companyId, [...new Set(rows.map((row) => row.entityId))])
    const last = rows.at(-1)
    return {
      rows: rows.map((row) => {
        const detail = row.detail as Detail
        const site = sites.get(row.entityId)
        return {
          ...{ id: row.id, operation: row.operation, entity: row.entity, entityId: row.entityId },
          at: row.at.toISOString(),
          who: row.personId ? (nameOf(row.personId) ?? 'Someone no longer here') : null,
          changes: changesIn(detail),
          note: detail.reason ?? detail.note ?? null,
          site: site ? { id: site.id, label: site.label } : null,
        }
      }),
      nextCursor: found.length > query.limit && last ? cursorOf(last.at.toISOString(), last.id) : null,
    }
  })
}
