import { inCompany } from '@almanac/database/in-company'
import type { ReminderAnswerKind } from '@almanac/records/reminder-answer'
import { now } from '@almanac/runtime/clock'
import { findReminder, hasLeft, reminderFacts } from './compose-reminder.ts'
import { whyAndWhen } from './reminder-text.ts'

/** What whoever holds the link sees. Their own reminder and the company's number, and nobody's name. */
export type LinkedReminder = {
  companyName: string
  telephone: string | null
  locale: string
  today: string
  /** `gone`: ended, too old, or its contact left; then nothing of the reminder is shown. */
  state: 'open' | 'answered' | 'gone'
  place: string | null
  /** Whole sentences: why and until when, in the locale that is asked for. */
  why: (locale: string) => string
  answer: { kind: ReminderAnswerKind; askAfter: string | null } | null
  /** Times that are held for this bed, where there are any. */
  offerId: string | null
}

/** A reminder as its link shows it; null for one that is not there. */
export async function readReminderLink({
  companyId,
  reminderId,
}: {
  companyId: string
  reminderId: string
}): Promise<LinkedReminder | null> {
  return inCompany({ companyId }, async (tx) => {
    const at = now()
    const found = await findReminder(tx, companyId, reminderId)
    if (!found || found.linkUntil === null) return null
    const { facts, today, locale } = await reminderFacts(tx, found, at)
    const answered = found.answer !== null
    const state = found.linkUntil <= at ? 'gone' : answered ? 'answered' : hasLeft(found) || found.bed.endedLatest ? 'gone' : 'open'
    const offer = await tx.windowOffer.findFirst({
      where: { companyId, state: 'open', expiresAt: { gt: at }, job: { bedId: found.bedId } },
      select: { id: true },
    })
    return {
      ...{ companyName: facts.companyName, telephone: facts.telephone, locale, today, state },
      place: state === 'gone' ? null : facts.siteLabel,
      why: (asked) => whyAndWhen(facts, today, { locale: asked }),
      answer:
        state === 'answered' && found.answer
          ? { kind: found.answer.kind as ReminderAnswerKind, askAfter: found.answer.askAfter?.toISOString().slice(0, 10) ?? null }
          : null,
      offerId: state === 'gone' ? null : (offer?.id ?? null),
    }
  })
}
