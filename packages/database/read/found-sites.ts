import type { Tx } from '../client.ts'
import type { Prisma } from '../generated/client.ts'
import { jobLine, OPEN_JOBS, tankLine } from './site-lines.ts'
import { type SearchTerms, siteSearchSql } from './site-search.ts'

/** Sites looked at for the best answers; a search that meets more wants another word. */
const LOOKED_AT = 400

type Person = { name: string; phone: string | null }
/** What a found site is judged and shown by. `people` has the holder's contacts, else the holder. */
export type FoundSite = {
  id: string
  label: string
  street: string | null
  town: string | null
  postcode: string | null
  customerName: string | null
  reference: string | null
  people: Person[]
}

/** The sites that meet every term, with the words they are judged by: one statement for the search, one for the words. */
export async function findSites(tx: Tx, companyId: string, terms: SearchTerms): Promise<FoundSite[]> {
  const found = await tx.$queryRaw<{ id: string }[]>(siteSearchSql({ companyId, terms, after: null, limit: LOOKED_AT }))
  if (found.length === 0) return []
  const ids = found.map((one) => one.id)
  const rows = await tx.$queryRaw<(Omit<FoundSite, 'people'> & { contacts: { name: string | null; phone: string | null }[] })[]>`
    select s.id, s.label, s.street, s.town, s.postcode, c.name as "customerName", c.reference,
      coalesce((
        select json_agg(json_build_object('name', k.name, 'phone', p.phone) order by p.phone is null, k.id, p.place) from contact k
        cross join lateral (select 0 as place, k.phone union all
          select o.place, btrim(o.phone) from unnest(string_to_array(k.other_phone, ';')) with ordinality o(phone, place)) p(place, phone)
        where k.company_id = s.company_id and k.customer_id = c.id and k.archived_at is null and (k.site_id is null or k.site_id = s.id)
      ), '[]') as contacts
    from site s
    left join lateral (
      select t.customer_id from tenure t where t.company_id = s.company_id and t.site_id = s.id and t.to_day is null order by t.id limit 1
    ) t on true
    left join customer c on c.company_id = s.company_id and c.id = t.customer_id
    where s.company_id = ${companyId}::uuid and s.id = any(${ids}::uuid[]) and s.archived_at is null
    order by s.label, s.id`
  return rows.map(({ contacts, ...site }) => ({ ...site, people: peopleOf(site.customerName, contacts) }))
}

/** A contact without a name goes by the customer's. The customer is named too where no contact is. */
function peopleOf(customerName: string | null, contacts: { name: string | null; phone: string | null }[]): Person[] {
  const people = contacts.flatMap(({ name, phone }) => {
    const known = name ?? customerName
    return known ? [{ name: known, phone }] : []
  })
  if (customerName === null || people.some((one) => one.name === customerName)) return people
  return [...people, { name: customerName, phone: people[0]?.phone ?? null }]
}

const PARTS = {
  softeners: {
    where: { archivedAt: null },
    orderBy: { id: 'asc' },
    select: {
      label: true,
      tanks: {
        where: { archivedAt: null },
        orderBy: { position: 'asc' },
        include: {
          beds: { where: { endedLatest: null, archivedAt: null }, take: 1, select: { id: true } },
        },
      },
    },
  },
  jobs: { ...OPEN_JOBS, take: 5 },
} satisfies Prisma.SiteInclude

/** The tanks with a bed in service and the open jobs of some sites, by site. */
export async function readTanksAndJobs(tx: Tx, companyId: string, ids: readonly string[]) {
  const sites = await tx.site.findMany({ where: { companyId, id: { in: [...ids] } }, include: PARTS })
  return new Map(
    sites.map((site) => [
      site.id,
      {
        tanks: site.softeners.flatMap((softener) =>
          softener.tanks.flatMap((tank) => {
            const { version: _, ...line } = tankLine(tank)
            return tank.beds[0] ? [{ bedId: tank.beds[0].id, softenerLabel: softener.label, tank: line }] : []
          }),
        ),
        jobs: site.jobs.map(jobLine),
      },
    ]),
  )
}

/** Open jobs of some kinds, the one that is due first at the head. */
export async function readJobsOfKinds(tx: Tx, companyId: string, kinds: readonly string[], most: number) {
  const jobs = await tx.job.findMany({
    ...OPEN_JOBS,
    where: { companyId, kind: { in: [...kinds] }, ...OPEN_JOBS.where },
    include: { ...OPEN_JOBS.include, site: { select: { label: true, town: true } } },
    take: most,
  })
  return jobs.map((job) => ({ ...jobLine(job), siteLabel: job.site.label, town: job.site.town }))
}
