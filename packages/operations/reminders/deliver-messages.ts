import type { Tx } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { settingsIn } from '@almanac/database/read/firm-settings'
import { type Command, commandTools } from '@almanac/database/run-command'
import { nextToSend } from '@almanac/database/sql/next-to-send'
import { fileStore } from '@almanac/files/file-store'
import type { Posted } from '@almanac/messages/posted'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { minutesToNextTry, nextSendingTime, SENDING_LOST_AFTER_MS, type SendingHours } from '@almanac/service-rules/messages/sending-times'
import { minuteOfClock } from '@almanac/units/calendar/zone-clock'
import { zoneOf } from '../shared/zone-of.ts'
import { stepMessage } from './step-message.ts'
import { readOutgoing, whyNotWanted } from './why-not-wanted.ts'

/** A message on its way out, already written down as `sending`. */
export type Outgoing = {
  companyId: string
  id: string
  reminderId: string | null
  channel: 'email' | 'text'
  companyName: string
  /** The company's own locale: how its region writes numbers. */
  companyLocale: string
  address: string
  subject: string
  body: string
  tries: number
  /** The file that goes with a mail, by its name there; its bytes lie in the store under the message's id. */
  fileName: string | null
}
/** The same with its file in hand. */
export type Posting = Outgoing & { attachment?: { name: string; bytes: Uint8Array } }
/** How messages go out by themselves, by channel: what is not here stays in the outbox for a person. */
export type Ways = Partial<Record<'email' | 'text', (message: Posting) => Promise<Posted>>>

/** After so many the task comes again, so that none runs for long. */
const AT_ONCE = 200
const MINUTE_MS = 60_000
const QUIET = 'It’s outside your sending hours at the customer’s.'
const BROKE_OFF = 'Sending broke off before we heard whether it arrived.'

type Work = <T>(work: (tx: Tx, command: Command) => Promise<T>) => Promise<T>

/**
 * The next message, written down as `sending` before anybody is talked to. What nobody should hear any more is withdrawn, and what would come in the quiet hours of
 * its reader waits for their morning. Null when there is none.
 */
async function takeNext(work: Work, companyId: string, channels: string[], hours: SendingHours): Promise<Outgoing | 'passed over' | null> {
  return work(async (tx, command) => {
    const id = await nextToSend(tx, companyId, channels, command.at)
    if (id === null) return null
    const message = await readOutgoing(tx, companyId, id)
    await command.announce('reminders', companyId)
    const unwanted = whyNotWanted(message)
    if (unwanted !== null) {
      await stepMessage(tx, command, message, 'withdraw', { stateReason: unwanted })
      return 'passed over'
    }
    const company = await tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { name: true, locale: true, timeZone: true } })
    const opens = nextSendingTime(zoneOf(message.reminder?.site ?? message.visit?.job.site) ?? company.timeZone, command.at, hours)
    if (opens > command.at) {
      const waits = { tryAfter: opens, stateReason: QUIET, version: { increment: 1 } }
      await tx.message.updateMany({ where: { companyId, id, state: 'approved' }, data: waits })
      return 'passed over'
    }
    const tries = message.tries + 1
    await stepMessage(tx, command, message, 'begin', { tries, sendingSince: command.at, tryAfter: null })
    const sender = { companyName: company.name, companyLocale: company.locale }
    const { reminderId, address, subject, body, fileName } = message
    const channel = message.channel as Outgoing['channel']
    return { companyId, id, reminderId, channel, ...sender, address, subject, body, tries, fileName }
  })
}

/** Writes down what came of it. Where somebody called it uncertain meanwhile, that it was taken is still told. */
async function settle(tx: Tx, command: Command, { companyId, id, tries }: Outgoing, posted: Posted): Promise<void> {
  const { state } = await tx.message.findUniqueOrThrow({ where: { companyId_id: { companyId, id } }, select: { state: true } })
  const message = { id, state }
  const wait = posted.outcome === 'later' ? minutesToNextTry(tries) : null
  if (posted.outcome === 'taken') await stepMessage(tx, command, message, 'take')
  else if (posted.outcome === 'uncertain') await stepMessage(tx, command, message, 'lose', { stateReason: posted.reason })
  else if (wait === null) await stepMessage(tx, command, message, 'refuse', { stateReason: posted.reason })
  else {
    const tryAfter = new Date(command.at.getTime() + wait * MINUTE_MS)
    await stepMessage(tx, command, message, 'put-off', { stateReason: posted.reason, tryAfter })
  }
  await command.announce('reminders', companyId)
}

/** What was being sent when its process died: nobody knows whether it went, so a person looks, and it is not sent again. */
async function loseOldOnes(tx: Tx, command: Command): Promise<void> {
  const since = new Date(command.at.getTime() - SENDING_LOST_AFTER_MS)
  const where = { companyId: command.companyId, state: 'sending', sendingSince: { lte: since } }
  const lost = await tx.message.findMany({ where, select: { id: true, state: true }, orderBy: { id: 'asc' } })
  for (const one of lost) await stepMessage(tx, command, one, 'lose', { stateReason: BROKE_OFF })
  if (lost.length > 0) await command.announce('reminders', command.companyId)
}

/** Asks for the next look: at the next try that is due, in a minute where some were not looked at yet, or when one that is still being sent would be lost. */
async function askAgain(tx: Tx, command: Command, channels: string[]): Promise<void> {
  const { companyId, at } = command
  const waiting = await tx.message.aggregate({
    where: { companyId, state: 'approved', channel: { in: channels }, tryAfter: { not: null } },
    _min: { tryAfter: true },
  })
  const untried = await tx.message.findFirst({
    where: { companyId, state: 'approved', channel: { in: channels }, tryAfter: null },
    select: { id: true },
  })
  const sending = await tx.message.aggregate({ where: { companyId, state: 'sending' }, _min: { sendingSince: true } })
  const lost = sending._min.sendingSince
  const times = [
    ...(waiting._min.tryAfter ? [new Date(Math.max(at.getTime(), waiting._min.tryAfter.getTime()))] : []),
    ...(untried ? [new Date(at.getTime() + MINUTE_MS)] : []),
    ...(lost ? [new Date(Math.max(at.getTime(), lost.getTime() + SENDING_LOST_AFTER_MS) + 1000)] : []),
  ]
  if (times.length === 0) return
  const next = new Date(Math.min(...times.map((time) => time.getTime())))
  // One look a minute at the most; a later one that is asked for already stands in nobody's way.
  await command.enqueue('send-messages', {}, `${companyId} ${next.toISOString().slice(0, 16)}`, next)
}

/**
 * Sends what is approved, one after the other, each written down as `sending` before and as what came of it after. Run twice, or by two workers at once, it
 * sends nothing twice: a message is taken by one of them, and one that broke off is never taken again by itself.
 */
export async function deliverMessages({ companyId }: TaskPayloads['send-messages'], ways: Ways): Promise<void> {
  const channels = Object.keys(ways)
  const work: Work = (inside) =>
    inCompany({ companyId }, (tx) => inside(tx, commandTools(tx, { companyId, personId: null }, 'reminders.deliver', null)))
  await work(loseOldOnes)
  const { sendFrom, sendUntil } = await work((tx) => settingsIn(tx, companyId))
  const hours = { from: minuteOfClock(sendFrom), until: minuteOfClock(sendUntil) }
  let open = channels
  for (let sent = 0; sent < AT_ONCE && open.length > 0; sent++) {
    const message = await takeNext(work, companyId, open, hours)
    if (message === null) break
    if (message === 'passed over') continue
    const posted = await send(message, ways)
    await work((tx, command) => settle(tx, command, message, posted))
    // A server that is away, or that broke off, is left alone until the next look; the other way goes on.
    if (posted.outcome === 'uncertain' || (posted.outcome === 'later' && posted.wholeServer))
      open = open.filter((channel) => channel !== message.channel)
  }
  await work((tx, command) => askAgain(tx, command, channels))
}

/** A message with its file; or why it can't go now, or never: without the file it would say what isn't so. */
async function withFile(message: Outgoing): Promise<Posting | Exclude<Posted, { outcome: 'taken' }>> {
  const { companyId, id, fileName } = message
  if (fileName === null) return message
  try {
    const bytes = await fileStore().get({ companyId, id })
    if (bytes) return { ...message, attachment: { name: fileName, bytes } }
    return { outcome: 'refused', reason: 'The report’s file is missing from the store.' }
  } catch {
    return { outcome: 'later', reason: 'The store of files can’t be reached.', wholeServer: false }
  }
}

/** A way that throws has said nothing of what became of the message. */
async function send(message: Outgoing, ways: Ways): Promise<Posted> {
  const way = ways[message.channel]
  const posting = await withFile(message)
  if ('outcome' in posting) return posting
  try {
    if (way) return await way(posting)
    return { outcome: 'later', reason: 'Nothing is set up to send it.', wholeServer: true }
  } catch {
    return { outcome: 'uncertain', reason: BROKE_OFF }
  }
}
