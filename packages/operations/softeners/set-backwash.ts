import type { BedFactChanges } from '@almanac/contract/beds'
import { expectChanged } from '@almanac/database/changed-row'
import type { Tx } from '@almanac/database/client'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { convertFlow } from '@almanac/units/flow'

type Flow = { value: number; unit: 'gpm' | 'L/min' } | null
type BedInSoftener = { companyId: string; tank: { id: string; softener: { id: string } | null } }
type Current = (version: number) => () => Promise<{ version: number }>

/** Keeps the installed backwash rate on the valve of the tank, or the one that serves the softener; takes the valve down where none was recorded. */
export async function setBackwash(
  tx: Tx,
  change: { bed: BedInSoftener; backwash: Flow; version: number | null; facts: BedFactChanges; current: Current },
): Promise<void> {
  const { companyId, tank } = change.bed
  if (!tank.softener)
    throw new AppError('conflict', 'This tank is in the workshop, so it has no valve. Nothing was saved; leave the backwash rate blank.')
  const backwashGpm = change.backwash && convertFlow(change.backwash.value, change.backwash.unit, 'gpm')
  const valves = await tx.valve.findMany({
    where: { companyId, softenerId: tank.softener.id, archivedAt: null, OR: [{ tankId: tank.id }, { tankId: null }] },
    orderBy: { tankId: { sort: 'desc', nulls: 'last' } },
    take: 1,
  })
  const valve = valves[0]
  if (!valve) {
    if (backwashGpm === null) return
    await tx.valve.create({ data: { companyId, id: newId(), softenerId: tank.softener.id, tankId: tank.id, label: 'Valve', backwashGpm } })
    return
  }
  const { count } = await tx.valve.updateMany({
    where: { companyId, id: valve.id, version: change.version ?? -1 },
    data: { backwashGpm, version: { increment: 1 } },
  })
  await expectChanged(count, 'valve', change.version ?? 0, change.facts, change.current(valve.version))
}
