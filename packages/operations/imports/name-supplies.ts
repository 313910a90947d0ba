import type { CheckImportInput, ImportSupply } from '@almanac/contract/imports'
import type { Tx } from '@almanac/database/client'
import { readPresentSupplies } from '@almanac/database/read/import-supplies'
import { notFound } from '@almanac/runtime/errors'
import { normaliseText } from '@almanac/service-rules/import/normalise'
import { type SupplyChoice, type SupplyChoices, usualSupply } from '@almanac/service-rules/import/supply-choices'
import { LISTS_REMEMBERED, type StoredMapping } from './batch-mapping.ts'
import type { FileWants } from './gather-wanted.ts'

/** A list whose supply column was chosen wrongly may name thousands. */
const MOST_SHOWN = 200

const isSaid = (one: ImportSupply) => one.from !== 'usual'

/** What somebody chose for the supplies of a list, by their folded names. */
export const choicesOf = (supplies: readonly ImportSupply[] | undefined): SupplyChoices =>
  new Map((supplies ?? []).filter(isSaid).map((one) => [normaliseText(one.name), one.choice]))

/** What was chosen for names of supplies in the lists imported last; of several choices for one name the latest. */
async function earlierChoices(tx: Tx, companyId: string): Promise<Map<string, SupplyChoice>> {
  const batches = await tx.importBatch.findMany({
    where: { companyId, state: { in: ['queued', 'applying', 'applied'] } },
    select: { mapping: true },
    orderBy: { id: 'desc' },
    take: LISTS_REMEMBERED,
  })
  const lists = batches.map(({ mapping }) => choicesOf((mapping as unknown as StoredMapping).supplies))
  return new Map(lists.reverse().flatMap((one) => [...one]))
}

/**
 * The supplies a list names, those of the most rows first, each with what is meant by it: as chosen now, as chosen for this list before, as chosen for an earlier
 * list while that supply is on record, else the usual. Not found where a supply chosen now is not the company's.
 */
export async function nameSupplies(
  tx: Tx,
  companyId: string,
  wants: FileWants,
  { now, before }: { now: CheckImportInput['supplies']; before: readonly ImportSupply[] | undefined },
): Promise<ImportSupply[]> {
  if (wants.supplies.size === 0 && now.length === 0) return []
  const present = await readPresentSupplies(tx, companyId)
  const names = new Set([...present.values()].filter((one) => !one.isArchived).map((one) => normaliseText(one.ownName)))
  const isThere = (choice: SupplyChoice) => choice.to !== 'supply' || present.get(choice.waterSupplyId)?.isArchived === false
  if (now.some(({ choice }) => !isThere(choice))) throw notFound('water supply')
  const chosen = new Map([...choicesOf(before), ...now.map((one) => [normaliseText(one.name), one.choice] as const)])
  const earlier = await earlierChoices(tx, companyId)
  const shown = [...wants.supplies.values()].sort((a, b) => b.rows - a.rows || a.line - b.line).slice(0, MOST_SHOWN)
  return shown.map(({ key, name, rows }) => {
    const own = chosen.get(key)
    const old = earlier.get(key)
    const isOnRecord = names.has(key)
    if (own && isThere(own)) return { name, rows, choice: own, from: 'chosen', isOnRecord }
    if (old && isThere(old)) return { name, rows, choice: old, from: 'earlier', isOnRecord }
    return { name, rows, choice: usualSupply(name), from: 'usual', isOnRecord }
  })
}
