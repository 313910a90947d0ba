import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import type { MessageState } from '@almanac/records/message-state'
import { type MessageEvent, nextMessageState } from '@almanac/service-rules/messages/message-states'

type More = { stateReason?: string | null; tryAfter?: Date | null; sendingSince?: Date | null; tries?: number }

/**
 * Takes a message one step on, if it is still where the caller saw it; null, or a sentence why nothing happened. `state` is what was read, `version` the one
 * that a person saw.
 */
export async function stepMessage(
  tx: Tx,
  command: Command,
  message: { id: string; state: string; version?: number },
  event: MessageEvent,
  more: More = {},
): Promise<string | null> {
  const { companyId, at } = command
  const { id, version } = message
  const from = message.state as MessageState
  const step = nextMessageState(from, event)
  if (!step.ok) return step.reason
  const settled = step.state === 'approved' || step.state === 'held' || step.state === 'sending' || step.state === 'uncertain'
  const { count } = await tx.message.updateMany({
    where: { companyId, id, state: from, version },
    data: { stateReason: null, ...more, state: step.state, settledAt: settled ? null : at, version: { increment: 1 } },
  })
  if (count === 0) return 'It changed after you opened the list. Look at it again.'
  await command.audit(event, 'message', id, { from, to: step.state })
  return null
}
