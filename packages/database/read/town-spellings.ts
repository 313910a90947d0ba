import type { Tx } from '../client.ts'

/** How each town that a site names is spelt by most of its sites: "LOWMOOR" and "lowmoor " are Lowmoor. Case and blanks about it are all that may differ. The one home of what one town is. */
export async function readTownSpellings(tx: Tx, companyId: string): Promise<Map<string, string>> {
  const rows = await tx.$queryRaw<{ written: string; folded: string; trimmed: string; sites: number }[]>`
    select town as written, lower(btrim(town)) as folded, btrim(town) as trimmed, count(*)::int as sites from site
    where company_id = ${companyId}::uuid and town is not null group by town order by trimmed`
  const spellings = new Map<string, Map<string, number>>()
  for (const { folded, trimmed, sites } of rows) {
    const of = spellings.get(folded) ?? new Map<string, number>()
    spellings.set(folded, of.set(trimmed, (of.get(trimmed) ?? 0) + sites))
  }
  // Of two that are as frequent the first by the alphabet.
  const most = new Map([...spellings].map(([folded, of]) => [folded, [...of].reduce((best, one) => (one[1] > best[1] ? one : best))[0]]))
  return new Map(rows.map(({ written, folded, trimmed }) => [written, most.get(folded) ?? trimmed]))
}
