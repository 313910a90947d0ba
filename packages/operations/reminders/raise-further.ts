import type { Tx } from '@almanac/database/client'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import { openJobStates } from '@almanac/records/job-state'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import { furtherNotices, type Notice } from '@almanac/service-rules/reminders/further-notices'
import { hasLeft } from './compose-reminder.ts'

const DAY_MS = 86_400_000

/** What was sent and nobody answered or called about, of beds that still wait for their rebed. */
const unanswered = (tx: Tx, companyId: string, after: Notice, notice: Notice, sentBefore: Date) =>
  tx.reminder.findMany({
    where: {
      ...{ companyId, notice: after, state: 'released', answer: null },
      messages: { some: { state: 'sent', settledAt: { lte: sentBefore } } },
      bed: {
        ...{ endedLatest: null, archivedAt: null, reminders: { none: { notice } } },
        jobs: { none: { kind: { in: [...bedRenewingKinds] }, state: { in: [...openJobStates] } } },
      },
      contact: { archivedAt: null },
      site: { archivedAt: null },
    },
    include: {
      contact: { include: { consents: true } },
      site: {
        select: {
          id: true,
          tenures: { where: { toDay: null }, select: { customerId: true } },
          calls: { orderBy: [{ at: 'desc' }, { id: 'desc' }], take: 1, select: { at: true } },
        },
      },
      bed: { select: { forecast: { select: { due10Day: true, due90Day: true } } } },
    },
  })

/**
 * Raises the further notices of windows whose last one was sent so many days ago by the firm's rules: for the same contact by the same way, and only where nobody
 * answered, called, left, booked or withdrew a consent since. Each waits for somebody to approve it. Answers how many were raised.
 */
export async function raiseFurther(
  tx: Tx,
  companyId: string,
  rules: { reminderNotices: number; reminderAgainDays: number },
): Promise<number> {
  const sentBefore = new Date(now().getTime() - rules.reminderAgainDays * DAY_MS)
  let raised = 0
  for (const { after, notice } of furtherNotices(rules.reminderNotices)) {
    const due = await unanswered(tx, companyId, after, notice, sentBefore)
    const data = due
      .filter(({ contact, site, channel, createdAt }) => {
        const called = site.calls.some((call) => call.at > createdAt)
        return !called && !hasLeft({ contact, site }) && contact.consents.some((one) => one.channel === channel && one.granted)
      })
      .map(({ bedId, siteId, contactId, channel, bed: { forecast } }) => ({
        ...{ companyId, id: newId(), bedId, siteId, contactId, channel, notice, state: 'waiting', createdAt: now() },
        ...{ dueEarliest: forecast?.due10Day, dueLatest: forecast?.due90Day },
      }))
    if (data.length > 0) raised += (await tx.reminder.createMany({ data, skipDuplicates: true })).count
  }
  return raised
}
