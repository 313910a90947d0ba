import type { WithdrawInput } from '@almanac/contract/water'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { refreshSiteForecasts } from '../shared/refresh-site-forecasts.ts'

/** Takes back a water test that was wrong. It stays in the database, and the beds are forecast without it. */
export async function withdrawTest(scope: Scope & { personId: string }, input: WithdrawInput): Promise<{ id: string; version: number }> {
  const { companyId } = scope
  return runCommand(scope, 'water.withdraw-test', input, async (tx, command) => {
    const where = { companyId, id: input.id, withdrawnAt: null }
    const found = await tx.waterTest.findFirst({ where, select: { siteId: true } })
    if (!found) throw notFound('water test')
    const { count } = await tx.waterTest.updateMany({
      where: { ...where, version: input.version },
      data: { withdrawnAt: command.at, version: { increment: 1 } },
    })
    await expectChanged(count, 'water test', input.version, {}, () => tx.waterTest.findFirst({ where }))
    await command.audit('withdrawn', 'water-test', input.id, { siteId: found.siteId })
    await command.announce('site', found.siteId)
    await refreshSiteForecasts(tx, command, { siteId: found.siteId })
    return { id: input.id, version: input.version + 1 }
  })
}
