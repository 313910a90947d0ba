import type { AddVehicle as AddVehicleInput } from '@almanac/contract/crews'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import type * as z from 'zod'

export type AddVehicle = z.infer<typeof AddVehicleInput>

/** Adds a vehicle with what it carries, in ft³ and lb. */
export async function addVehicle(scope: Scope & { personId: string }, input: AddVehicle): Promise<{ id: string; version: number }> {
  return runCommand(scope, 'crews.add-vehicle', input, async (tx, command) => {
    const { commandId: _, ...values } = input
    const id = newId()
    await tx.vehicle.create({ data: { companyId: scope.companyId, id, ...values } })
    await command.audit('added', 'vehicle', id, values)
    await command.announce('vehicle', id, 1)
    return { id, version: 1 }
  })
}
