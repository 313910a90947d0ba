import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'

/** The turn of an agreement that a job is, if it is one, was done on a day. */
export async function noteTurnDone(tx: Tx, command: Command, jobId: string, doneDay: string): Promise<void> {
  const { companyId } = command
  const turns = await tx.agreementTurn.findMany({ where: { companyId, jobId, state: 'proposed' }, select: { id: true, agreementId: true } })
  for (const { id, agreementId } of turns) {
    await tx.agreementTurn.update({
      where: { companyId_id: { companyId, id } },
      data: { state: 'done', doneDay: dateOf(doneDay), version: { increment: 1 } },
    })
    await command.announce('agreement', agreementId)
  }
}
