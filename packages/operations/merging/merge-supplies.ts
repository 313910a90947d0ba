import type { Merged, MergeSupplies } from '@almanac/contract/merging'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { type MovedFrom, moveRecords } from '@almanac/database/sql/move-records'
import { notFound } from '@almanac/runtime/errors'
import { noteMerging, refuseOne } from './note-merging.ts'

/** Sites changed their water: whoever edits one meanwhile is told. */
export async function markSitesChanged(tx: Tx, companyId: string, moved: readonly MovedFrom[]): Promise<void> {
  const ids = moved.filter((one) => one.from === 'site').flatMap((one) => one.ids)
  await tx.site.updateMany({ where: { companyId, id: { in: ids } }, data: { version: { increment: 1 } } })
}

/** Every bed on a supply is forecast again, by its water. */
export const forecastSupply = (command: Command, waterSupplyId: string) =>
  command.enqueue('forecast-company', { waterSupplyId, cause: 'supply' })

/**
 * Makes two water supplies one: the sites on the one that goes are on the other. What the kept one delivered stays as it was noted; where nobody noted anything, the
 * other's notes become its own. The name that goes stays on record, archived, so that a list that uses it finds the one that was kept.
 */
export async function mergeSupplies(scope: Scope & { personId: string }, input: MergeSupplies): Promise<Merged> {
  return runCommand(scope, 'merging.supplies', input, async (tx, command) => {
    refuseOne(input)
    const { companyId } = scope
    const { keptId, goneId } = input
    await lockRows(tx, companyId, 'water_supply', [keptId, goneId])
    const live = await tx.waterSupply.findMany({
      where: { companyId, id: { in: [keptId, goneId] }, archivedAt: null },
      select: { id: true },
    })
    if (live.length < 2) throw notFound('water supply')
    const moved = await moveRecords(tx, companyId, 'supply', { from: goneId, to: keptId })
    const isNoted = (await tx.supplyPeriod.count({ where: { companyId, waterSupplyId: keptId } })) > 0
    if (!isNoted) moved.push(...(await moveRecords(tx, companyId, 'supplyHistory', { from: goneId, to: keptId })))
    await markSitesChanged(tx, companyId, moved)
    await tx.waterSupply.update({
      where: { companyId_id: { companyId, id: goneId } },
      data: { archivedAt: command.at, version: { increment: 1 } },
    })
    await forecastSupply(command, keptId)
    return noteMerging(tx, command, 'supply', input, moved)
  })
}
