import type { Decided, DecideInput } from '@almanac/contract/reminders'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import { composeReminder } from './compose-reminder.ts'
import { stepMessage } from './step-message.ts'

type Result = Decided['results'][number]

/** How long the link in a reminder can be answered. */
const LINK_DAYS = 180

/** From which state each decision leads where. */
const STEPS = {
  release: { from: ['waiting', 'held'], to: 'released' },
  hold: { from: ['waiting'], to: 'held' },
  unhold: { from: ['held'], to: 'waiting' },
} as const

const NOT_NOW: Record<string, string> = {
  released: 'It was already approved.',
  dropped: 'It was canceled, because a job is open or the bed has ended.',
  held: 'It’s on hold.',
  waiting: 'It’s not on hold.',
}

/** Writes what the reminder says down as an approved message; null, or why nobody can be told. */
async function writeMessage(tx: Tx, command: Command, reminderId: string): Promise<string | null> {
  const { companyId, at } = command
  const composed = await composeReminder(tx, companyId, reminderId, at)
  if (typeof composed === 'string') return composed
  const message = { id: newId(), state: 'drafted' }
  await tx.message.create({ data: { companyId, reminderId, ...message, ...composed, createdAt: at } })
  const linkUntil = new Date(at.getTime() + LINK_DAYS * 86_400_000)
  await tx.reminder.updateMany({ where: { companyId, id: reminderId }, data: { linkUntil } })
  return stepMessage(tx, command, message, 'approve')
}

async function decideOne(
  tx: Tx,
  command: Command,
  one: DecideInput['reminders'][number],
  decision: DecideInput['decision'],
): Promise<Result> {
  const { companyId } = command
  const step = STEPS[decision]
  const row = await tx.reminder.findUnique({ where: { companyId_id: { companyId, id: one.id } }, select: { state: true, version: true } })
  if (!row) return { id: one.id, done: false, reason: 'That reminder isn’t in this company.' }
  if (!(step.from as readonly string[]).includes(row.state))
    return { id: one.id, done: false, reason: NOT_NOW[row.state] ?? 'Its state changed.' }
  const { count } = await tx.reminder.updateMany({
    where: { companyId, id: one.id, version: one.version },
    data: { state: step.to, version: { increment: 1 } },
  })
  if (count === 0) return { id: one.id, done: false, reason: 'It changed after you opened the list. Look at it again.' }
  const refused = decision === 'release' ? await writeMessage(tx, command, one.id) : null
  if (refused) {
    await tx.reminder.updateMany({
      where: { companyId, id: one.id },
      data: { state: row.state, stateReason: refused, version: { increment: 1 } },
    })
    return { id: one.id, done: false, reason: refused }
  }
  await command.audit(decision, 'reminder', one.id)
  return { id: one.id, done: true, reason: null }
}

/** Holds, frees or releases reminders, each by itself; a released one becomes a message in the outbox. Answers for each what came of it. */
export async function decideReminders(scope: Scope & { personId: string }, input: DecideInput): Promise<Decided> {
  return runCommand(scope, 'reminders.decide', input, async (tx, command) => {
    const results: Result[] = []
    for (const one of [...input.reminders].sort((a, b) => (a.id < b.id ? -1 : 1)))
      results.push(await decideOne(tx, command, one, input.decision))
    await command.announce('reminders', scope.companyId)
    if (results.some((one) => one.done) && input.decision === 'release') await command.enqueue('send-messages', {}, scope.companyId)
    return { results }
  })
}
