import type { WithdrawInput } from '@almanac/contract/water'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'

/** Takes back an entry of a supply's history that was wrong. It stays in the database, and the beds are forecast without it. */
export async function withdrawPeriod(scope: Scope & { personId: string }, input: WithdrawInput): Promise<{ id: string; version: number }> {
  const { companyId } = scope
  return runCommand(scope, 'water.withdraw-period', input, async (tx, command) => {
    const where = { companyId, id: input.id, withdrawnAt: null }
    const found = await tx.supplyPeriod.findFirst({ where, select: { waterSupplyId: true } })
    if (!found) throw notFound('entry of a water supply')
    const { count } = await tx.supplyPeriod.updateMany({
      where: { ...where, version: input.version },
      data: { withdrawnAt: command.at, version: { increment: 1 } },
    })
    await expectChanged(count, 'entry', input.version, {}, () => tx.supplyPeriod.findFirst({ where }))
    await command.audit('period withdrawn', 'water-supply', found.waterSupplyId, { periodId: input.id })
    await command.announce('water-supply', found.waterSupplyId)
    await command.enqueue('forecast-company', { waterSupplyId: found.waterSupplyId, cause: 'supply' })
    return { id: input.id, version: input.version + 1 }
  })
}
