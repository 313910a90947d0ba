import type { Scope } from '@almanac/database/in-company'
import { readLoadList } from '@almanac/database/read/store-demand'

/** What goes onto the vehicle for one day sheet, item by item; `picked` once all of it is loaded. */
export async function loadList(scope: Pick<Scope, 'companyId'>, crewDayId: string) {
  const lines = new Map<string, { stockItemId: string; name: string; unit: string; quantity: number; onHand: number }>()
  const reserved = await readLoadList(scope, crewDayId)
  for (const { stockItem, quantity } of reserved) {
    const { id, ...item } = stockItem
    const before = lines.get(id)?.quantity ?? 0
    lines.set(id, { stockItemId: id, ...item, quantity: before + quantity })
  }
  return {
    picked: reserved.length > 0 && reserved.every((one) => one.state === 'picked'),
    lines: [...lines.values()].sort((a, b) => a.name.localeCompare(b.name)),
  }
}
