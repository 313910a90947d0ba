import type { Decided, StepInput } from '@almanac/contract/reminders'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { markDeadEmail } from './dead-email.ts'
import { stepMessage } from './step-message.ts'

/** What somebody at a desk does to messages: holds, frees, withdraws, marks as sent, sends again, says that one came back. Answers for each what came of it. */
export async function stepMessages(scope: Scope & { personId: string }, input: StepInput): Promise<Decided> {
  return runCommand(scope, 'reminders.step', input, async (tx, command) => {
    const { companyId } = scope
    const results: Decided['results'] = []
    for (const { id, version } of [...input.messages].sort((a, b) => (a.id < b.id ? -1 : 1))) {
      const found = await tx.message.findUnique({
        where: { companyId_id: { companyId, id } },
        select: { id: true, state: true, contactId: true, channel: true, address: true },
      })
      const reason = found
        ? // Sent again, it has all its tries anew.
          await stepMessage(
            tx,
            command,
            { ...found, version },
            input.event,
            input.event === 'send-again' ? { tries: 0, tryAfter: null } : {},
          )
        : 'That message isn’t in this company.'
      if (found && reason === null && input.event === 'bounce') await markDeadEmail(tx, command, found)
      results.push({ id, done: reason === null, reason })
    }
    await command.announce('reminders', companyId)
    if (input.event === 'free' || input.event === 'send-again') await command.enqueue('send-messages', {}, companyId)
    return { results }
  })
}
