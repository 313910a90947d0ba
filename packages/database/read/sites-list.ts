import type { Tx } from '../client.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { cursorOf, readCursor } from './page-key.ts'
import { BED_LINE, bedLine, byDay, jobLine, OPEN_JOBS, tankLine } from './site-lines.ts'
import { siteSearchSql } from './site-search.ts'

/** `terms` are made by the search's own reading of what was typed; none lists all sites. */
export type SiteListQuery = { terms: readonly string[]; limit: number; cursor?: string }

/** Sites by label, or those that match every term; paged by label and id. */
export async function readSites(scope: Pick<Scope, 'companyId'>, query: SiteListQuery) {
  const after = query.cursor ? readCursor(query.cursor, 'string') : null
  return inCompany(scope, async (tx) => {
    const { companyId } = scope
    const found = await tx.$queryRaw<{ id: string; label: string }[]>(
      siteSearchSql({ companyId, terms: query.terms.map((term) => [term]), after, limit: query.limit + 1 }),
    )
    const page = found.slice(0, query.limit)
    const last = page.at(-1)
    return {
      rows: await rowsOf(
        tx,
        companyId,
        page.map((one) => one.id),
      ),
      nextCursor: found.length > query.limit && last ? cursorOf(last.label, last.id) : null,
    }
  })
}

const PARTS = {
  tenures: { where: { toDay: null }, take: 1, select: { customer: { select: { name: true } } } },
  softeners: {
    where: { archivedAt: null },
    orderBy: { id: 'asc' },
    select: {
      tanks: {
        where: { archivedAt: null },
        orderBy: { position: 'asc' },
        include: { beds: { where: { endedLatest: null, archivedAt: null }, include: BED_LINE } },
      },
    },
  },
  jobs: { ...OPEN_JOBS, take: 5 },
} satisfies Prisma.SiteInclude

async function rowsOf(tx: Tx, companyId: string, ids: string[]) {
  const sites = await tx.site.findMany({ where: { companyId, id: { in: ids } }, include: PARTS })
  const byId = new Map(sites.map((site) => [site.id, site]))
  return ids.flatMap((id) => {
    const site = byId.get(id)
    if (!site) return []
    const tanks = site.softeners.flatMap((softener) => softener.tanks)
    const beds = tanks.flatMap((tank) => tank.beds.map(bedLine)).sort((a, b) => byDay(a.due50Day, b.due50Day))
    const jobs = site.jobs.map(jobLine).sort((a, b) => byDay(a.visitDay ?? a.dueLatest, b.visitDay ?? b.dueLatest))
    return [
      {
        id: site.id,
        label: site.label,
        street: site.street,
        town: site.town,
        customerName: site.tenures[0]?.customer.name ?? null,
        tanks: tanks.map(({ version, ...tank }) => withoutVersion(tankLine({ version, ...tank }))),
        beds,
        nextJob: jobs[0] ?? null,
      },
    ]
  })
}

function withoutVersion<T extends { version: number }>({ version: _, ...rest }: T): Omit<T, 'version'> {
  return rest
}
