import type { StopPlan } from '@almanac/contract/plans'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'

/** Stops a plan that is being worked out: what the search finds afterwards is thrown away. */
export async function stopPlan(scope: Scope & { personId: string }, input: StopPlan) {
  return runCommand(scope, 'jobs.stop-plan', input, async (tx, command) => {
    const { companyId } = scope
    const { planId, version } = input
    const { count } = await tx.planProposal.updateMany({
      where: { companyId, id: planId, version, state: 'running' },
      data: { state: 'stopped', version: { increment: 1 } },
    })
    await expectChanged(count, 'plan', version, { state: 'stopped' }, () =>
      tx.planProposal.findUnique({ where: { companyId_id: { companyId, id: planId } }, select: { version: true, state: true } }),
    )
    await command.audit('stopped', 'plan', planId)
    await command.announce('plan', planId)
    return { planId, version: version + 1 }
  })
}
