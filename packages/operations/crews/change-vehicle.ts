import type { ChangeVehicle } from '@almanac/contract/crews'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { crewVehicle } from '@almanac/database/read/crews'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { changesOf } from '../shared/changes-of.ts'
import { checkRoom } from './check-room.ts'
import { refuseInUse } from './refuse-in-use.ts'

/** Changes a vehicle's name and what it carries; or that it was given up, or came back. */
export async function changeVehicle(scope: Scope & { personId: string }, input: ChangeVehicle): Promise<{ id: string; version: number }> {
  const { commandId: _, vehicleId: id, version, left, why, ...values } = input
  checkRoom(values, why)
  return runCommand(scope, 'crews.change-vehicle', input, async (tx, command) => {
    const { companyId } = scope
    const where = { companyId_id: { companyId, id } }
    const read = () => tx.vehicle.findUnique({ where, include: { absences: { where: { archivedAt: null } } } })
    const before = await read()
    if (!before) throw notFound('vehicle')
    if (left && !before.archivedAt) await refuseInUse(tx, companyId, command.at, before.name, { vehicleId: id })
    const { count } = await tx.vehicle.updateMany({
      where: { companyId, id, version },
      data: { ...values, archivedAt: left ? (before.archivedAt ?? command.at) : null, version: { increment: 1 } },
    })
    await expectChanged(count, 'vehicle', version, { ...values, left }, async () => {
      const row = await read()
      return row && crewVehicle(row)
    })
    await command.audit('changed', 'vehicle', id, {
      ...changesOf({ ...before, left: before.archivedAt !== null }, { ...values, left }),
      why,
    })
    await command.announce('vehicle', id, version + 1)
    return { id, version: version + 1 }
  })
}
