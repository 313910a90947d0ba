import type { Decided, DecideInput } from '@almanac/contract/reminders'
import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { type Command, runCommand } from '@almanac/database/run-command'
import { oneOf } from '@almanac/records/choices'
import { languages, localeFor } from '@almanac/records/language'
import { newId } from '@almanac/runtime/ids'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { reminderText } from './reminder-text.ts'
import { stepMessage } from './step-message.ts'

type Result = Decided['results'][number]

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

async function writeMessage(tx: Tx, command: Command, reminderId: string): Promise<string | null> {
  const { companyId } = command
  const found = await tx.reminder.findUniqueOrThrow({
    where: { companyId_id: { companyId, id: reminderId } },
    include: { contact: { include: { consents: true } }, site: true },
  })
  const { contact, site, channel } = found
  // Consent is read again at the last moment: it may have been withdrawn since the reminder was raised.
  const granted = contact.archivedAt === null && contact.consents.some((consent) => consent.channel === channel && consent.granted)
  if (!granted) return 'The contact no longer agrees to be reached this way. Nothing was sent; ask at the next call.'
  const address =
    channel === 'email'
      ? contact.email
      : channel === 'letter'
        ? [site.street, site.town, site.postcode].filter(Boolean).join(', ')
        : contact.phone
  if (!address) return 'The contact has no address or number for this any more. Nothing was sent; add one at the site.'
  const company = await tx.company.findUniqueOrThrow({ where: { id: companyId } })
  const facts = {
    companyName: company.name,
    telephone: company.telephone,
    contactName: contact.name,
    siteLabel: site.label,
    dueEarliest: dayOf(found.dueEarliest),
    dueLatest: dayOf(found.dueLatest),
  }
  const locale = localeFor(oneOf(languages, contact.language), company.locale)
  const text = reminderText(facts, dayIn(company.timeZone, command.at), { locale })
  const message = { id: newId(), state: 'drafted' }
  const to = { contactId: contact.id, channel, address }
  await tx.message.create({ data: { companyId, reminderId, ...message, ...to, ...text, createdAt: command.at } })
  await stepMessage(tx, command, message, 'approve')
  return null
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
