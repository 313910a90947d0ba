import type { FieldAnswer, FieldCommand } from '@almanac/contract/field'
import { afterSending, type Outbox, type SendingEnd, toSend, type Waiting } from '@almanac/service-rules/field/outbox'
import { readFailure } from '../failure.ts'
import { changeOutbox, type Owner, readOutbox } from './field-store.ts'

/** With a weak signal a request may hang for ever: after this long it counts as not arrived, and the same goes again. */
const PATIENCE_MS = 20_000

export type Send = (command: FieldCommand, options: { signal: AbortSignal }) => Promise<FieldAnswer>

/** Sends one command; a refusal and no answer at all are ends too. */
export async function sendOne(send: Send, queueId: string, next: Waiting & { oldest: number }): Promise<SendingEnd> {
  const { commandId, sequence, oldest, form, kind, madeAt, body } = next
  const command = { commandId, queueId, sequence, oldest, form, kind, madeAt, body: { ...body }, sentAt: new Date().toISOString() }
  try {
    return await send(command, { signal: AbortSignal.timeout(PATIENCE_MS) })
  } catch (error) {
    const { code, detail } = readFailure(error)
    const elsewhere = detail.otherCompany === true ? 'other-company' : detail.otherPerson === true ? 'other-person' : undefined
    return { result: 'failed', code, elsewhere }
  }
}

/** Sends what waits, one after the other, until nothing is left or one gets no answer. `tell` hears of the queue after each. */
async function sendInTurn(owner: Owner, send: Send, tell: (outbox: Outbox, taken: Waiting | null) => void): Promise<void> {
  for (let outbox = await readOutbox(owner), next = toSend(outbox); next; next = toSend(outbox)) {
    const sent = next
    const end = await sendOne(send, outbox.queueId, sent)
    outbox = await changeOutbox(owner, (now) => afterSending(now, sent, end))
    tell(outbox, end.result === 'taken' ? sent : null)
    if (end.result === 'failed') return
  }
}

/** As `sendInTurn`, by one window of the browser at a time: another that sends already is left to it. */
export async function sendOutbox(owner: Owner, send: Send, tell: (outbox: Outbox, taken: Waiting | null) => void): Promise<void> {
  // Browsers have locks on pages of their own machine and by https only; the server applies each command once in any case.
  const locks = 'locks' in navigator ? (navigator.locks as LockManager | undefined) : undefined
  if (!locks) return sendInTurn(owner, send, tell)
  await locks.request(`field ${owner}`, { ifAvailable: true }, async (lock) => {
    if (lock) await sendInTurn(owner, send, tell)
  })
}
