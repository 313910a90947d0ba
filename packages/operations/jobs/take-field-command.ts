import type { FieldAnswer, FieldCommand } from '@almanac/contract/field'
import type { Tx } from '@almanac/database/client'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { attempt, lockQueue } from '@almanac/database/sql/field-queue'
import type { SetAsideKind } from '@almanac/records/set-aside-kind'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { log } from '@almanac/runtime/log'
import { judgeArrival } from '@almanac/service-rules/field/arrival'
import { wordsIn } from '@almanac/words/words-in'
import { companyFacts } from '../shared/company-facts.ts'
import { noteCloseOut } from './close-out-visit.ts'
import { type FieldDeed, readFieldCommand, visitNamedIn } from './read-field-command.ts'
import { noteStart, noteStartTakenBack } from './start-visit.ts'

/** A command as it stays, however often it is sent. */
type Numbered = Omit<FieldCommand, 'oldest' | 'sentAt'>
type Taking = { tx: Tx; command: Command; sent: Numbered; locale: string; clockAheadMinutes: number; personId: string }
/** A clock that is further off than this says nothing more; the column would not hold the years of a made-up one. */
const A_CENTURY_MIN = 100 * 365.25 * 24 * 60

type Refusal = Parameters<ReturnType<typeof wordsIn<'refusal'>>>[0]

/** Thrown out of the transaction, so that nothing of it is stored. */
class SendFirst extends Error {
  readonly expects: number

  constructor(expects: number) {
    super('a lower number comes first')
    this.expects = expects
  }
}

const say = ({ locale }: Taking, key: Refusal, values?: Record<string, string | number>): string =>
  wordsIn(locale, 'refusal')(key, values as never)

/** Writes down for the dispatcher what could not be taken in, or what they must know of what was. */
async function tell(taking: Taking, kind: SetAsideKind, reason: string, content: Record<string, unknown>): Promise<void> {
  const { tx, command, sent, personId, clockAheadMinutes } = taking
  const { companyId } = command
  const { commandId, queueId, sequence } = sent
  const named = visitNamedIn(sent.body)
  const visit = named ? await tx.visit.findUnique({ where: { companyId_id: { companyId, id: named } }, select: { id: true } }) : null
  const id = newId()
  await tx.setAside.create({
    data: {
      ...{ companyId, id, kind, commandId, queueId, sequence, personId, reason, clockAheadMinutes },
      ...{
        visitId: visit?.id ?? null,
        command: sent.kind,
        content: content as object,
        madeAt: new Date(sent.madeAt),
        receivedAt: command.at,
      },
    },
  })
  // No reason and no content here: a person may be named in them.
  await command.audit('received', 'set-aside', id, { kind, sequence })
  await command.announce('set-aside', id, 1)
}

async function setAside(taking: Taking, kind: SetAsideKind, reason: string): Promise<FieldAnswer> {
  await tell(taking, kind, reason, taking.sent.body)
  return { result: 'set-aside', reason }
}

/** Whether the person is on the day sheets and yet on another crew than the one booked. */
async function isOtherCrew({ tx, command: { companyId }, personId }: Taking, visitId: string): Promise<boolean> {
  const self = await tx.colleague.findFirst({ where: { companyId, personId, archivedAt: null }, select: { id: true } })
  return self !== null && (await tx.assignment.count({ where: { companyId, visitId, colleagueId: self.id, released: false } })) === 0
}

/** Does what the tablet says was done. What a crew did is a fact: it lands whatever the office planned meanwhile, and the dispatcher is told. */
async function land(taking: Taking, deed: FieldDeed): Promise<void> {
  const { tx, command, sent } = taking
  if (deed.kind !== 'close-out')
    return deed.kind === 'start' ? noteStart(tx, command, deed.visitId) : noteStartTakenBack(tx, command, deed.visitId)
  const { calledOff } = await noteCloseOut(tx, command, deed.record, { asFact: true })
  if (calledOff) await tell(taking, 'landed', say(taking, 'landedCalledOff'), sent.body)
  else if (await isOtherCrew(taking, deed.visitId)) await tell(taking, 'landed', say(taking, 'landedOtherCrew'), sent.body)
}

/** The sentence of a refusal, in the company's language; what is unknown is logged, since nobody else sees it. */
function reasonOf(taking: Taking, refused: unknown): string {
  if (refused instanceof AppError) return refused.spoken?.(taking.locale) ?? refused.message
  log().error({ error: refused, commandId: taking.sent.commandId }, 'unexpected')
  return say(taking, 'code/unexpected')
}

async function take(taking: Taking, oldest: number): Promise<FieldAnswer> {
  const { tx, command, sent, personId } = taking
  const { queueId, sequence } = sent
  const taken = await lockQueue(tx, { companyId: command.companyId, personId, queueId })
  const arrival = judgeArrival({ taken, sequence, oldest })
  if (arrival.is === 'too-early') throw new SendFirst(arrival.expects)
  if (arrival.is === 'number-used') return setAside(taking, 'refused', say(taking, 'numberUsed'))
  if (arrival.is === 'after-loss') {
    const { from, until } = arrival
    await tell(taking, 'lost', say(taking, 'lost', { count: until - from + 1 }), { from, until })
  }
  // What a second device held of a visit that another one closed: nothing to apply, all of it to be read.
  if (sent.kind === 'entries') return setAside(taking, 'refused', say(taking, 'secondDevice'))
  const deed = readFieldCommand(sent.form, sent.kind, sent.body)
  if (!deed) return setAside(taking, 'unreadable', say(taking, 'unreadable'))
  const tried = await attempt(tx, () => land(taking, deed))
  return 'done' in tried ? { result: 'taken' } : setAside(taking, 'refused', reasonOf(taking, tried.refused))
}

/**
 * Takes one command of a tablet's queue, by the promises of docs/field-protocol.md: applied once, in the order of its queue, in one transaction with its stored answer.
 * What can't be applied is set aside for the dispatcher with all its content, in the same transaction. Throws what may succeed later; then nothing is stored.
 */
export async function takeFieldCommand(scope: Scope & { personId: string }, input: FieldCommand): Promise<FieldAnswer> {
  const { oldest, sentAt, ...sent } = input
  const { queueId, sequence } = sent
  const ahead = Math.round((Date.parse(sentAt) - now().getTime()) / 60_000)
  const clockAheadMinutes = Math.max(-A_CENTURY_MIN, Math.min(A_CENTURY_MIN, ahead))
  try {
    return await runCommand<Numbered, FieldAnswer>(
      scope,
      'jobs.take-field-command',
      sent,
      async (tx, command) => {
        const { locale } = await companyFacts(tx, scope.companyId)
        return take({ tx, command, sent, locale, clockAheadMinutes, personId: scope.personId }, oldest)
      },
      { number: { queueId, sequence } },
    )
  } catch (error) {
    if (error instanceof SendFirst) return { result: 'send-first', expects: error.expects }
    throw error
  }
}
