import type { TakeBackAbsence } from '@almanac/contract/crews'
import { expectChanged } from '@almanac/database/changed-row'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'

/** Takes days away back: the person works, the vehicle runs. */
export async function takeBackAbsence(
  scope: Scope & { personId: string },
  input: TakeBackAbsence,
): Promise<{ id: string; version: number }> {
  const { absenceId: id, version } = input
  return runCommand(scope, 'crews.take-back-absence', input, async (tx, command) => {
    const { companyId } = scope
    const { count } = await tx.absence.updateMany({
      where: { companyId, id, version, archivedAt: null },
      data: { archivedAt: command.at, version: { increment: 1 } },
    })
    await expectChanged(count, 'absence', version, {}, () =>
      tx.absence.findUnique({ where: { companyId_id: { companyId, id } }, select: { id: true, version: true, archivedAt: true } }),
    )
    await command.audit('taken back', 'absence', id)
    await command.announce('absence', id, version + 1)
    return { id, version: version + 1 }
  })
}
