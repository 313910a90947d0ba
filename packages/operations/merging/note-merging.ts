import type { ChangedEntity } from '@almanac/contract/changed-entity'
import type { Merged } from '@almanac/contract/merging'
import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import type { MovedFrom } from '@almanac/database/sql/move-records'
import type { Mergeable } from '@almanac/records/merging'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

/** What a notice calls each kind. */
export const ENTITY: Record<Mergeable, ChangedEntity> = { customer: 'customer', site: 'site', town: 'site', supply: 'water-supply' }

export const refuseOne = (input: { keptId: string; goneId: string }) => {
  if (input.keptId === input.goneId) throw new AppError('conflict', 'These are one and the same already. Nothing was merged; choose two.')
}

/** Notes what moved, so that it can be undone, and says so. */
export async function noteMerging(
  tx: Tx,
  command: Command,
  kind: Exclude<Mergeable, 'town'>,
  { keptId, goneId }: { keptId: string; goneId: string },
  moved: MovedFrom[],
): Promise<Merged> {
  const { companyId, at, personId } = command
  const mergingId = newId()
  await tx.merging.create({ data: { companyId, id: mergingId, kind, keptId, goneId, moved, at, personId: personId ?? '' } })
  await command.audit('merged', ENTITY[kind], keptId, { gone: goneId, moved: moved.map(({ from, ids }) => ({ from, rows: ids.length })) })
  await command.announce(ENTITY[kind], keptId)
  await command.announce(ENTITY[kind], goneId)
  return { mergingId, moved: moved.reduce((sum, one) => sum + one.ids.length, 0) }
}
