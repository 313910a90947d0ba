import type { Tx } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { type Command, commandTools } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { sourceOn } from '@almanac/records/fact-source'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import { openJobStates } from '@almanac/records/job-state'
import { type DoneBy, doneByWords } from '@almanac/records/reminder-answer'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { formatDay } from '@almanac/units/format-day'
import { oweCall } from '../shared/call-backs.ts'
import { type CompanyFacts, companyFacts } from '../shared/company-facts.ts'
import { endAndBeginBed } from '../shared/end-and-begin-bed.ts'
import type { ProposeInside } from '../shared/propose-job.ts'
import { findReminder, hasLeft } from './compose-reminder.ts'

/** What a customer answers by the link. `askAfter` and `day` are ISO days. */
export type LinkAnswer =
  | { kind: 'days'; days: string }
  | { kind: 'not-now'; askAfter: string }
  | { kind: 'done'; day: string; by: DoneBy }
  | { kind: 'moved' }
  | { kind: 'stop' }

type Found = NonNullable<Awaited<ReturnType<typeof findReminder>>>

const wrongDay = () => new AppError('invalid', 'That day can’t be right. Nothing was saved.', { field: 'day' })

/** They want a visit: a rebed is added with the days that suit; where one is open already, somebody calls. */
async function wantVisit(tx: Tx, command: Command, found: Found, days: string, today: string, propose: ProposeInside): Promise<void> {
  const { companyId, siteId, bedId } = found
  const open = await tx.job.findFirst({
    where: { companyId, bedId, kind: { in: [...bedRenewingKinds] }, state: { in: [...openJobStates] } },
    select: { id: true },
  })
  const note = `By the link in a reminder. Days that suit: ${days}`
  if (open) await oweCall(tx, command, { cause: 'asked', dueDay: today, siteId, jobId: open.id, note })
  else await propose(tx, command, { siteId, bedId, kind: 'rebed', askedFor: { by: 'link', days } })
}

/** They say that it was replaced: the bed ends that day and one that nobody knows more of begins; somebody asks for the rest. */
async function replaced(tx: Tx, command: Command, found: Found, day: string, by: DoneBy, company: CompanyFacts): Promise<void> {
  const { bed, siteId } = found
  if (day > company.today || day < (dayOf(bed.beganEarliest) ?? day) || day < (dayOf(bed.lastSeenDay) ?? day)) throw wrongDay()
  await endAndBeginBed(tx, command, {
    ...{ tankId: bed.tankId, endedEarliest: day, endedLatest: day, cause: 'unknown', visitId: null },
    newBed: { resinKind: 'unknown', volumeFt3: null, gravelLb: null, tubeCutIn: null, from: sourceOn('said by link', day) },
  })
  const note = `By the link in a reminder: the resin was replaced ${doneByWords[by]}, ${formatDay(day, company)}. Ask which resin went in.`
  await oweCall(tx, command, { cause: 'asked', dueDay: company.today, siteId, note })
}

/** They left: the contact of this house is archived, and somebody finds out who lives there now. */
async function moved(tx: Tx, command: Command, found: Found, today: string): Promise<void> {
  const { companyId, siteId, contact } = found
  if (contact.siteId === siteId)
    await tx.contact.updateMany({ where: { companyId, id: contact.id }, data: { archivedAt: command.at, version: { increment: 1 } } })
  await command.announce('contact', contact.id)
  const note = 'By the link in a reminder: they have moved. Find out who has the softener now, then set the new customer.'
  await oweCall(tx, command, { cause: 'asked', dueDay: today, siteId, note })
}

/** No more of these by this way: as if they had said so on a call. */
async function stop(tx: Tx, command: Command, found: Found, today: string): Promise<void> {
  const { companyId, channel, contactId } = found
  const answer = { granted: false, source: 'link', sinceDay: dateOf(today) }
  const { count } = await tx.consent.updateMany({
    where: { companyId, contactId, channel },
    data: { ...answer, version: { increment: 1 } },
  })
  if (count === 0) await tx.consent.create({ data: { companyId, id: newId(), contactId, channel, ...answer } })
  await command.audit('refused', 'consent', contactId, { contactId, channel, source: 'link', sinceDay: today })
  await command.announce('contact', contactId)
  await command.enqueue('raise-reminders', {}, companyId)
}

/**
 * Does what a customer answered by the link, once: a second answer changes nothing, but whoever wants no more is always heard. False where the link no longer
 * works. Refuses a day that cannot be.
 */
export async function answerReminder(
  { companyId, reminderId }: { companyId: string; reminderId: string },
  answer: LinkAnswer,
  propose: ProposeInside,
): Promise<boolean> {
  return inCompany({ companyId }, async (tx) => {
    const command = commandTools(tx, { companyId, personId: null }, 'reminders.answer', null)
    await lockRows(tx, companyId, 'reminder', [reminderId])
    const found = await findReminder(tx, companyId, reminderId)
    if (!found || found.linkUntil === null || found.contact.erasedAt !== null) return false
    const company = await companyFacts(tx, companyId)
    if (answer.kind === 'stop') await stop(tx, command, found, company.today)
    if (found.answer) return true
    if (answer.kind !== 'stop' && (found.linkUntil <= command.at || hasLeft(found) || found.bed.endedLatest !== null)) return false
    if (answer.kind === 'not-now' && answer.askAfter <= company.today) throw wrongDay()
    if (answer.kind === 'days') await wantVisit(tx, command, found, answer.days, company.today, propose)
    if (answer.kind === 'done') await replaced(tx, command, found, answer.day, answer.by, company)
    if (answer.kind === 'moved') await moved(tx, command, found, company.today)
    await tx.reminderAnswer.create({
      data: {
        ...{ companyId, id: newId(), reminderId, kind: answer.kind, createdAt: command.at },
        ...(answer.kind === 'days' && { days: answer.days }),
        ...(answer.kind === 'not-now' && { askAfter: dateOf(answer.askAfter) }),
        ...(answer.kind === 'done' && { doneDay: dateOf(answer.day), doneBy: answer.by }),
      },
    })
    await command.audit('answered', 'reminder', reminderId, { kind: answer.kind })
    await command.announce('reminders', companyId)
    return true
  })
}
