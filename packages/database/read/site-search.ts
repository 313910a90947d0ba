import type { Tx } from '../client.ts'
import { Prisma } from '../generated/client.ts'

/** Each term with the spellings that meet it, the typed one first. */
export type SearchTerms = readonly (readonly string[])[]
type SiteSearch = { companyId: string; terms: SearchTerms; after: { sort: string; id: string } | null; limit: number }

/**
 * The sites that match every term, by label: one of the term's spellings begins one of the site's tokens. Ranges instead of LIKE, because only plain comparisons use an
 * index under row security. A term of one letter matches most sites, so it is probed site by site instead of collected.
 */
export function siteSearchSql({ companyId, terms, after, limit }: SiteSearch): Prisma.Sql {
  const isLong = ([typed = '']: readonly string[]) => [...typed].length > 1
  const long = terms.filter(isLong)
  const short = terms.filter((term) => !isLong(term))
  const matching = long.map(
    (term) => Prisma.sql`select k.site_id from search_token k where k.company_id = ${companyId}::uuid and ${begins(term)}`,
  )
  const collected = matching.length > 0 ? Prisma.sql`with hit as materialized (${Prisma.join(matching, ' intersect ')})` : Prisma.empty
  const among = matching.length > 0 ? Prisma.sql`and s.id in (select site_id from hit)` : Prisma.empty
  const probes = short.map(
    (term) => Prisma.sql`and exists (
      select from search_token k where k.company_id = ${companyId}::uuid and k.site_id = s.id and ${begins(term)} offset 0)`,
  )
  const probed = probes.length > 0 ? Prisma.join(probes, ' ') : Prisma.empty
  const beyond = after ? Prisma.sql`and (s.label, s.id) > (${after.sort}, ${after.id}::uuid)` : Prisma.empty
  return Prisma.sql`${collected}
    select s.id, s.label from site s
    where s.company_id = ${companyId}::uuid and s.archived_at is null ${among} ${probed} ${beyond}
    order by s.label, s.id limit ${limit}`
}

/** Tokens that begin with one of these spellings, as ranges in byte order. */
function begins(spellings: readonly string[]): Prisma.Sql {
  const ranges = spellings.map((one) => Prisma.sql`(k.token >= ${one} and k.token < ${endOfPrefix(one)})`)
  return ranges.length === 1 && ranges[0] ? ranges[0] : Prisma.sql`(${Prisma.join(ranges, ' or ')})`
}

/** Those of some terms that begin a token of the company's, in the order given. One look into the index for each. */
export async function knownTerms(tx: Tx, companyId: string, terms: readonly string[]): Promise<string[]> {
  if (terms.length === 0) return []
  const found = await tx.$queryRaw<{ term: string }[]>`
    select t.term from unnest(${[...terms]}::text[], ${terms.map(endOfPrefix)}::text[]) with ordinality as t (term, beyond, place)
    cross join lateral (
      select from search_token k where k.company_id = ${companyId}::uuid and k.token >= t.term collate "C" and k.token < t.beyond collate "C" limit 1
    ) k
    order by t.place`
  return found.map((one) => one.term)
}

/** The first text after all that begin with `prefix`: its last character moved on by one. */
export function endOfPrefix(prefix: string): string {
  const characters = [...prefix]
  const last = characters.pop()?.codePointAt(0) ?? 0
  // Surrogates are no characters; the next one after U+D7FF is U+E000.
  return characters.join('') + String.fromCodePoint(last === 0xd7ff ? 0xe000 : last + 1)
}
