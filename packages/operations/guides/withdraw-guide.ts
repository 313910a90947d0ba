import type { WithdrawGuide } from '@almanac/contract/guides'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'

/** Ends a link at once; what was measured by it stays. */
export async function withdrawGuide(
  scope: Scope & { personId: string },
  input: WithdrawGuide,
): Promise<{ guideId: string; version: number }> {
  return runCommand(scope, 'guides.withdraw', input, async (tx, command) => {
    const { companyId } = scope
    const { guideId: id, version } = input
    const found = await tx.ownerGuide.findFirst({ where: { companyId, id }, select: { version: true, softenerId: true } })
    if (!found) throw notFound('guide')
    const { count } = await tx.ownerGuide.updateMany({
      where: { companyId, id, version },
      data: { withdrawnAt: command.at, version: { increment: 1 } },
    })
    await expectChanged(count, 'guide', version, {}, async () => ({ version: found.version }))
    await command.audit('measuring link ended', 'softener', found.softenerId, { guideId: id })
    await command.announce('guide', id, version + 1)
    return { guideId: id, version: version + 1 }
  })
}
