import type { AddVehicle } from '@almanac/contract/crews'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import { checkRoom } from './check-room.ts'

/** Adds a vehicle with what it carries, in ft³ and lb. */
export async function addVehicle(scope: Scope & { personId: string }, input: AddVehicle): Promise<{ id: string; version: number }> {
  const { commandId: _, why, ...values } = input
  checkRoom(values, why)
  return runCommand(scope, 'crews.add-vehicle', input, async (tx, command) => {
    const id = newId()
    await tx.vehicle.create({ data: { companyId: scope.companyId, id, ...values } })
    await command.audit('added', 'vehicle', id, { ...values, why })
    await command.announce('vehicle', id, 1)
    return { id, version: 1 }
  })
}
