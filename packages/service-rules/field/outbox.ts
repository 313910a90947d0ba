/** One command that waits on a tablet to be sent; `body` is what the server reads by `kind` and `form`. */
export type Waiting = {
  sequence: number
  commandId: string
  form: number
  kind: string
  madeAt: string
  body: Readonly<Record<string, unknown>>
  /** For the tablet's own lists. */
  visitId: string
  siteLabel: string
}

/** Why a queue stands still until somebody does something. */
export type Halt = 'sign-in' | 'no-access' | 'other-company' | 'other-person'

/** What the office keeps of a command that could not be taken in, as the tablet says it until it was read. */
export type Told = { commandId: string; siteLabel: string; reason: string }

/** The queue of one person of one company on one device. */
export type Outbox = {
  queueId: string
  /** The number that the next command gets. */
  next: number
  waiting: readonly Waiting[]
  /** Failures since the last answer. */
  tries: number
  /** A number that the server asked for first. */
  first: number | null
  halt: Halt | null
  told: readonly Told[]
  /** What the server's door would not even read: kept here to be shown, since it is nowhere else. */
  stuck: readonly Waiting[]
}

export const emptyOutbox = (queueId: string): Outbox => ({
  ...{ queueId, next: 1, waiting: [], tries: 0, first: null, halt: null, told: [], stuck: [] },
})

/** Adds a command at the end, under the next number. */
export function enqueue(outbox: Outbox, command: Omit<Waiting, 'sequence'>): Outbox {
  return { ...outbox, next: outbox.next + 1, waiting: [...outbox.waiting, { ...command, sequence: outbox.next }] }
}

/** What to send now, with the lowest number held; null where nothing waits or the queue stands still. */
export function toSend(outbox: Outbox): (Waiting & { oldest: number }) | null {
  const [lowest] = outbox.waiting
  if (!lowest || outbox.halt) return null
  const asked = outbox.waiting.find((one) => one.sequence === outbox.first)
  return { ...(asked ?? lowest), oldest: lowest.sequence }
}

/** How a sending ended: with the server's answer, or without one (`unreachable`, or the code of its refusal). */
export type SendingEnd =
  | { result: 'taken' }
  | { result: 'set-aside'; reason: string }
  | { result: 'send-first'; expects: number }
  | { result: 'failed'; code: string; elsewhere?: 'other-company' | 'other-person' | undefined }

const HALTS: Readonly<Record<string, Halt>> = { unauthenticated: 'sign-in', forbidden: 'no-access' }
/** The server may do it yet: the same is sent again. */
const AGAIN = ['unreachable', 'unavailable', 'rate-limited', 'unexpected', 'misconfigured']

/** The queue after a sending. A command leaves `waiting` with the server's answer and not before; a second answer to it changes nothing. */
export function afterSending(outbox: Outbox, sent: Waiting, end: SendingEnd): Outbox {
  const others = outbox.waiting.filter((one) => one.commandId !== sent.commandId)
  if (others.length === outbox.waiting.length) return outbox
  const answered = { ...outbox, waiting: others, tries: 0, first: null, halt: null }
  if (end.result === 'taken') return answered
  if (end.result === 'set-aside') {
    const { commandId, siteLabel } = sent
    return { ...answered, told: [...outbox.told, { commandId, siteLabel, reason: end.reason }] }
  }
  if (end.result === 'send-first') return { ...outbox, tries: 0, first: end.expects, halt: null }
  const halt = end.elsewhere ?? HALTS[end.code] ?? null
  if (halt) return { ...outbox, halt }
  if (AGAIN.includes(end.code)) return { ...outbox, tries: outbox.tries + 1, halt: null }
  // Its envelope can't be read (too large, a character that can't be stored): sent again it would be refused again, and hold up what comes after it.
  return { ...answered, stuck: [...outbox.stuck, sent] }
}

/** Milliseconds to wait before sending again: two seconds, doubled with each failure, a minute at most. */
export function backoffMs(tries: number): number {
  return Math.min(60_000, 1000 * 2 ** Math.min(tries, 6))
}

/** Stands on again: somebody signed in, or came back to the company. */
export const resume = (outbox: Outbox): Outbox => ({ ...outbox, halt: null, tries: 0 })
