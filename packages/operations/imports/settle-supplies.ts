import type { Tx } from '@almanac/database/client'
import { newId } from '@almanac/runtime/ids'
import { normaliseText } from '@almanac/service-rules/import/normalise'
import type { FileWants } from './gather-wanted.ts'
import type { SupplyPlan } from './plan-types.ts'

/**
 * Finds or plans the water supplies a file names, by name without regard to case and accents. A supply without any history gets the disinfectant most
 * of its rows tell of, as far back as anyone knows; one with a history keeps it.
 */
export async function settleSupplies(tx: Tx, companyId: string, wants: FileWants, plan: SupplyPlan): Promise<Map<string, string>> {
  const idOf = new Map<string, string>()
  if (wants.supplies.size === 0) return idOf
  const stored = await tx.waterSupply.findMany({
    where: { companyId },
    select: { id: true, name: true, archivedAt: true, periods: { where: { withdrawnAt: null }, select: { id: true }, take: 1 } },
  })
  const byName = new Map(stored.map((one) => [normaliseText(one.name), one]))
  for (const wanted of wants.supplies.values()) {
    const known = byName.get(wanted.key)
    const id = known?.id ?? newId()
    idOf.set(wanted.key, id)
    if (!known) plan.create.push({ id, name: wanted.name, kind: wanted.isWell ? 'private-well' : 'town', line: wanted.line })
    else if (known.archivedAt) plan.revive.push(id)
    const told = [...wanted.disinfectants].sort((a, b) => b[1] - a[1])[0]
    if (told && (known?.periods.length ?? 0) === 0) plan.periods.push({ supplyId: id, disinfectant: told[0], line: wanted.line })
  }
  return idOf
}
