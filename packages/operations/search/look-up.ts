import type { Finding } from '@almanac/contract/find'
import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type FoundSite, findSites, readJobsOfKinds, readTanksAndJobs } from '@almanac/database/read/found-sites'
import { knownTerms } from '@almanac/database/read/site-search'
import { nearTerms } from '@almanac/service-rules/search/near-terms'
import { type QueryReading, queryReadings } from '@almanac/service-rules/search/query-readings'
import { rankSite, type SiteRank } from '@almanac/service-rules/search/rank-site'
import { cardToken, searchWords } from '@almanac/service-rules/search/search-tokens'
import { firmFigures } from '../shared/firm-figures.ts'

/** So many answers of a kind: more would not be read. */
const MOST_OF_A_KIND = 6
/** Words that are looked for with a slip in them; each costs a few hundred looks into the index. */
const MOST_FORGIVEN = 3
const SHORTEST_CARD_WORD = 3
/** Spellings followed for one word. */
const MOST_SPELLINGS = 40

type Ranked = { site: FoundSite; rank: SiteRank }

/**
 * People, addresses, tanks and open jobs that a search meets, the best of each. Where nothing meets it as typed, one slip in each longer word is forgiven, and
 * `near` says so. Only rows of the scope's company, and none that was archived or taken back.
 */
export async function lookUp(scope: Pick<Scope, 'companyId'>, query: string): Promise<{ findings: Finding[]; near: boolean }> {
  const plain = queryReadings(query)
  if (plain.length === 0) return { findings: [], near: false }
  return inCompany(scope, async (tx) => {
    const { valves } = await firmFigures(tx, scope.companyId)
    const readings = plain.map((reading) => ({ ...reading, terms: reading.terms.map((term) => withCards(term, valves)) }))
    for (const reading of readings) {
      const findings = await findingsOf(tx, scope.companyId, reading)
      if (findings.length > 0) return { findings, near: false }
    }
    for (const reading of readings) {
      const forgiving = await withSlips(tx, scope.companyId, reading)
      const findings = forgiving ? await findingsOf(tx, scope.companyId, forgiving) : []
      if (findings.length > 0) return { findings, near: true }
    }
    return { findings: [], near: false }
  })
}

/** A word of a valve card's name stands for the card too. */
function withCards(spellings: readonly string[], cards: readonly { id: string; label: string }[]): string[] {
  const typed = spellings[0] ?? ''
  const meant =
    typed.length < SHORTEST_CARD_WORD ? [] : cards.filter((card) => searchWords(card.label).some((word) => word.startsWith(typed)))
  return [...spellings, ...meant.map((card) => cardToken(card.id))]
}

/**
 * The reading with the spellings one slip away that the company's records hold; null where there are none. The slip is in the words that no record begins with;
 * only where each is known by itself, in any of them.
 */
async function withSlips(tx: Tx, companyId: string, reading: QueryReading): Promise<QueryReading | null> {
  const typed = reading.terms.map(([term = '']) => term)
  const known = new Set(await knownTerms(tx, companyId, typed))
  const unknown = typed.filter((term) => !known.has(term))
  const forgiven = (unknown.length > 0 ? unknown : typed).filter((term) => nearTerms(term).length > 0).slice(0, MOST_FORGIVEN)
  if (forgiven.length === 0 || unknown.some((term) => !forgiven.includes(term))) return null
  const terms: string[][] = []
  for (const [term = '', ...others] of reading.terms) {
    const near = forgiven.includes(term) ? await knownTerms(tx, companyId, nearTerms(term)) : []
    terms.push([term, ...others, ...near.slice(0, MOST_SPELLINGS)])
  }
  return { ...reading, terms }
}

async function findingsOf(tx: Tx, companyId: string, reading: QueryReading): Promise<Finding[]> {
  const { terms, kinds } = reading
  if (terms.length === 0) {
    const jobs = await readJobsOfKinds(tx, companyId, kinds, MOST_OF_A_KIND)
    return jobs.map(({ id, siteLabel, town, ...job }) => ({ of: 'job', jobId: id, job, siteLabel, town }))
  }
  const ranked = (await findSites(tx, companyId, terms))
    .map((site): Ranked => ({ site, rank: rankSite(textsOf(site), reading) }))
    .sort((a, b) => a.rank.score - b.rank.score)
  const best = (by: SiteRank['by']) => ranked.filter((one) => one.rank.by === by).slice(0, MOST_OF_A_KIND)
  const [people, addresses, byTank] = [best('person'), best('address'), best('tank')]
  const more = await readTanksAndJobs(
    tx,
    companyId,
    [...people, ...addresses, ...byTank].map((one) => one.site.id),
  )
  const tanks = byTank.flatMap(({ site }) =>
    (more.get(site.id)?.tanks ?? []).map((tank): Finding => ({ of: 'tank', ...tank, ...placeOf(site) })),
  )
  const jobs = [...people, ...addresses, ...byTank].flatMap(({ site }) =>
    (more.get(site.id)?.jobs ?? [])
      .filter((job) => kinds.length === 0 || kinds.includes(job.kind))
      .map(({ id, ...job }): Finding => ({ of: 'job', jobId: id, job, ...placeOf(site) })),
  )
  const first = (findings: Finding[]) => findings.slice(0, MOST_OF_A_KIND)
  if (kinds.length > 0) return first(jobs)
  // Whoever types a whole address means it, though a customer number begins with its digits.
  const nearest = (found: Ranked[]) => found[0]?.rank.score ?? Number.POSITIVE_INFINITY
  const byName = [people.map(personOf), addresses.map(addressOf)]
  return [...(nearest(addresses) < nearest(people) ? byName.reverse() : byName).flat(), ...first(tanks), ...first(jobs)]
}

const placeOf = (site: FoundSite) => ({ siteLabel: site.label, town: site.town })

/** The street, where the site goes by another name: a search that met it by its street would not say why. */
function streetOf({ label, street }: FoundSite): string | null {
  const named = new Set(searchWords(label))
  return street && !searchWords(street).every((word) => named.has(word)) ? street : null
}

const present = (texts: (string | null)[]): string[] => texts.filter((text) => text !== null)

const textsOf = (site: FoundSite) => ({
  place: present([site.label, site.street]),
  area: present([site.town, site.postcode]),
  people: site.people,
  reference: site.reference,
})

function personOf({ site, rank }: Ranked): Finding {
  const met = rank.person === null ? site.people[0] : site.people[rank.person]
  const name = met?.name ?? site.customerName ?? site.label
  return { of: 'person', siteId: site.id, name, phone: met?.phone ?? null, street: streetOf(site), ...placeOf(site) }
}

const addressOf = ({ site }: Ranked): Finding => ({
  of: 'address',
  siteId: site.id,
  customerName: site.customerName,
  street: streetOf(site),
  ...placeOf(site),
})
