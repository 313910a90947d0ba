import type { Tx } from '@almanac/database/client'
import { type PresentSupply, readPresentSupplies } from '@almanac/database/read/import-supplies'
import type { Disinfectant } from '@almanac/records/disinfectant'
import { newId } from '@almanac/runtime/ids'
import { normaliseText } from '@almanac/service-rules/import/normalise'
import { usualSupply } from '@almanac/service-rules/import/supply-choices'
import { namesWell } from '@almanac/service-rules/import/well-names'
import type { WantedSupply } from './gather-wanted.ts'
import type { SupplyPlan } from './plan-types.ts'
import { type SupplyInput, wellFinder } from './settle-wells.ts'

/** What is put on a supply while nothing says what it delivers: the disinfectant most rows tell of. */
const mostTold = (told: ReadonlyMap<Disinfectant, number>) => [...told].sort((a, b) => b[1] - a[1])[0]?.[0]

/**
 * Finds or plans the water supply of each site whose row names one: as somebody chose for the name, else by name without regard to case and accents, and a well for
 * each home that has its own. A supply without any history gets the disinfectant most of its rows tell of, as far back as anyone knows; one with a history keeps it.
 * Answers by the key of the site.
 */
export async function settleSupplies(tx: Tx, input: SupplyInput, plan: SupplyPlan): Promise<Map<string, string>> {
  const { companyId, wants, choices } = input
  const supplyOf = new Map<string, string>()
  if (wants.supplies.size === 0) return supplyOf
  const present = await readPresentSupplies(tx, companyId)
  const byName = new Map<string, PresentSupply>()
  for (const one of present.values()) {
    const key = normaliseText(one.ownName)
    // Two spellings of one name: the one in use counts.
    if (byName.get(key)?.isArchived !== false) byName.set(key, one)
  }
  const wells = wellFinder(input, present, byName, plan)
  const shared = new Map<string, string>()
  const choiceOf = ({ key, name }: WantedSupply) => choices.get(key) ?? usualSupply(name)
  for (const wanted of wants.supplies.values()) {
    const choice = choiceOf(wanted)
    if (choice.to === 'own-wells') continue
    const known = choice.to === 'supply' ? present.get(choice.waterSupplyId) : byName.get(wanted.key)
    const id = known?.id ?? newId()
    shared.set(wanted.key, id)
    if (!known) plan.create.push({ id, name: wanted.name, kind: namesWell(wanted.name) ? 'private-well' : 'town', line: wanted.line })
    else if (known.isArchived) plan.revive.push(id)
    const told = mostTold(wanted.disinfectants)
    const isTold = plan.periods.some((one) => one.supplyId === id)
    if (told && !known?.hasHistory && !isTold) plan.periods.push({ supplyId: id, disinfectant: told, line: wanted.line })
  }
  for (const [siteKey, { supply, line, disinfectant }] of wants.supplyOfSite) {
    const id = shared.get(supply) ?? wells.of(siteKey, line)
    supplyOf.set(siteKey, id)
    if (!shared.has(supply) && disinfectant && !present.get(id)?.hasHistory) plan.periods.push({ supplyId: id, disinfectant, line })
  }
  return supplyOf
}

/** Leaves out what no site came to: somebody had put the home on other water since, or removed it. */
export function leaveUnusedSupplies(plan: SupplyPlan, used: ReadonlySet<unknown>): void {
  const made = new Set(plan.create.map((one) => one.id))
  plan.create = plan.create.filter((one) => used.has(one.id))
  plan.revive = plan.revive.filter((id) => used.has(id))
  plan.periods = plan.periods.filter((one) => used.has(one.supplyId) || !made.has(one.supplyId))
}
