import type { AddSupplyInput } from '@almanac/contract/water'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

/** Adds a town's supply or a private well, still without a history. */
export async function addSupply(scope: Scope & { personId: string }, input: AddSupplyInput): Promise<{ waterSupplyId: string }> {
  return runCommand(scope, 'water.add-supply', input, async (tx, command) => {
    const same = await tx.waterSupply.findFirst({ where: { companyId: scope.companyId, name: input.name }, select: { id: true } })
    if (same)
      throw new AppError('conflict', `There’s already a supply called “${input.name}”. Nothing was added; open that one.`, {
        waterSupplyId: same.id,
      })
    const id = newId()
    await tx.waterSupply.create({ data: { companyId: scope.companyId, id, name: input.name, kind: input.kind } })
    await command.audit('added', 'water-supply', id, { kind: input.kind })
    await command.announce('water-supply', id, 1)
    return { waterSupplyId: id }
  })
}
