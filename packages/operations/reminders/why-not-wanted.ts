import type { Tx } from '@almanac/database/client'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import { openJobStates } from '@almanac/records/job-state'
import { hasAnswered, hasLeft } from './compose-reminder.ts'

/** A message as it is looked at just before it goes out. */
export async function readOutgoing(tx: Tx, companyId: string, id: string) {
  return tx.message.findUniqueOrThrow({
    where: { companyId_id: { companyId, id } },
    include: {
      contact: { include: { consents: true } },
      visit: { select: { job: { select: { site: { select: { latitude: true, longitude: true } } } } } },
      reminder: {
        include: {
          site: {
            select: {
              id: true,
              archivedAt: true,
              latitude: true,
              longitude: true,
              tenures: { where: { toDay: null }, select: { customerId: true } },
            },
          },
          bed: {
            include: {
              jobs: { where: { kind: { in: [...bedRenewingKinds] }, state: { in: [...openJobStates] } }, select: { id: true }, take: 1 },
              reminders: { select: { answer: { select: { createdAt: true } } } },
            },
          },
        },
      },
    },
  })
}

type Outgoing = Awaited<ReturnType<typeof readOutgoing>>

/** Why nobody should hear this any more, though it was approved; null where they should. What was approved yesterday may be booked today. */
export function whyNotWanted({ channel, contact, reminder }: Outgoing): string | null {
  if (contact.archivedAt !== null) return 'The contact was archived.'
  if (!contact.consents.some((one) => one.channel === channel && one.granted)) return 'The contact no longer agrees to be reached this way.'
  if (channel === 'email' && contact.email !== null && contact.email === contact.deadEmail) return 'Mail to this address came back.'
  if (!reminder) return null
  if (hasLeft({ contact, site: reminder.site })) return 'The contact no longer belongs to this site.'
  if (hasAnswered(reminder)) return 'The customer has answered.'
  if (reminder.bed.jobs.length > 0) return 'A job for this bed is open.'
  if (reminder.bed.endedLatest !== null || reminder.bed.archivedAt !== null) return 'The bed is no longer in service.'
  return reminder.site.archivedAt !== null ? 'The site was archived.' : null
}
