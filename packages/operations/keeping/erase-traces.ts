import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import { type ErasedIn, eraseTexts } from '@almanac/database/sql/erase-texts'
import { erasePatterns, type Traces } from '@almanac/service-rules/erase/erase-pattern'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'

/** Names in `names` that somebody else on record bears too: a customer, a contact or a colleague who is none of `own`. */
async function sharedNames(tx: Tx, companyId: string, names: readonly string[], own: readonly string[]): Promise<string[]> {
  const shared: string[] = []
  for (const name of names) {
    const where = { companyId, name: { equals: name, mode: 'insensitive' as const }, id: { notIn: [...own] } }
    const found = (await tx.customer.count({ where })) + (await tx.contact.count({ where })) + (await tx.colleague.count({ where }))
    if (found > 0) shared.push(name)
  }
  return shared
}

/** The sites whose words changed with these rows. */
async function sitesOf(tx: Tx, companyId: string, rows: readonly ErasedIn[]): Promise<string[]> {
  const of = (table: string) => rows.filter((row) => row.table === table).map((row) => row.id)
  const softeners = await tx.softener.findMany({ where: { companyId, id: { in: of('softener') } }, select: { siteId: true } })
  return [...of('site'), ...softeners.map((one) => one.siteId)]
}

/**
 * Takes what names a person out of every text of the company: notes, close-outs, messages, lists, the audit trail, stored answers. `own` are their own rows,
 * `around` the records in which a name of one word, or one that somebody else bears too, must mean them. Archives made before go as well, since each holds everybody.
 * Answers in how many places, and how many archives go.
 */
export async function eraseTraces(
  tx: Tx,
  command: Command,
  traces: Traces,
  { own, around }: { own: readonly string[]; around: readonly string[] },
): Promise<{ places: number; exports: number }> {
  const { companyId } = command
  // Nobody can look into a file; one that is kept to be read again holds what its rows held.
  await tx.importFilePiece.deleteMany({ where: { companyId, batch: { state: { not: 'reading' } } } })
  const shared = await sharedNames(tx, companyId, traces.names, own)
  const { everywhere, nearby } = erasePatterns(traces, shared)
  const changed = [
    ...(everywhere === null ? [] : await eraseTexts(tx, everywhere, null)),
    ...(nearby === null || around.length === 0 ? [] : await eraseTexts(tx, nearby, around)),
  ]
  await rewriteSiteTokens(tx, companyId, await sitesOf(tx, companyId, changed))
  const { count: exports } = await tx.companyExport.updateMany({
    where: { companyId, state: { in: ['waiting', 'writing', 'ready'] } },
    data: { state: 'removed', version: { increment: 1 } },
  })
  await command.announce('export', companyId)
  return { places: new Set(changed.map(({ table, id }) => `${table} ${id}`)).size, exports }
}
