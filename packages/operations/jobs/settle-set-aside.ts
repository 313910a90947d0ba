import type { SettleSetAside } from '@almanac/contract/field'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'

/** Notes that somebody in the office dealt with what a tablet sent: it leaves the list; the row stays. */
export async function settleSetAside(scope: Scope & { personId: string }, input: SettleSetAside): Promise<{ id: string; version: number }> {
  return runCommand(scope, 'jobs.settle-set-aside', input, async (tx, command) => {
    const { companyId } = scope
    const where = { companyId_id: { companyId, id: input.asideId } }
    const found = await tx.setAside.findUnique({ where, select: { id: true, version: true, settledAt: true } })
    if (!found) throw notFound('entry')
    const changed = await tx.setAside.updateMany({
      where: { companyId, id: input.asideId, version: input.version, settledAt: null },
      data: { settledAt: command.at, settledBy: command.personId, version: { increment: 1 } },
    })
    const { id, version, settledAt } = found
    await expectChanged(changed.count, 'entry', input.version, { settled: true }, async () => ({
      id,
      version,
      settled: settledAt !== null,
    }))
    await command.audit('settled', 'set-aside', id)
    await command.announce('set-aside', id, version + 1)
    return { id, version: version + 1 }
  })
}
