import type { EndLinkInput } from '@almanac/contract/reminders'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'

/** Ends the link of a reminder; whoever follows it afterwards is told whom to call. False where it had ended. */
export async function endLink(scope: Scope & { personId: string }, input: EndLinkInput): Promise<{ ended: boolean }> {
  return runCommand(scope, 'reminders.end-link', input, async (tx, command) => {
    const { companyId } = scope
    const { reminderId: id } = input
    const found = await tx.reminder.findUnique({ where: { companyId_id: { companyId, id } }, select: { id: true } })
    if (!found) throw notFound('reminder')
    const { count } = await tx.reminder.updateMany({
      where: { companyId, id, linkUntil: { gt: command.at } },
      data: { linkUntil: command.at, version: { increment: 1 } },
    })
    if (count > 0) await command.audit('link ended', 'reminder', id)
    await command.announce('reminders', companyId)
    return { ended: count > 0 }
  })
}
