import type { Tx } from '../client.ts'
import { dateOf, dayOf } from '../days.ts'
import { DROPPED_FOR_LEFT } from '../sql/settle-reminders.ts'
import { IN_SERVICE } from './in-service.ts'

/** A bed whose window has come within reach and for which nothing was ever raised, with the people one could tell. */
export type ReminderCandidate = {
  bedId: string
  siteId: string
  earlyDay: string
  lateDay: string
  jobState: string | null
  contacts: {
    contactId: string
    role: string
    name: string | null
    phone: string | null
    email: string | null
    letterAddress: boolean
    consents: { channel: string; granted: boolean }[]
  }[]
}

/**
 * Candidates up to `lastEarlyDay`, a limited number at a time. Beds with a reminder of this notice, in whatever state, are left out; but for one that was dropped because whom it
 * was for has left.
 */
export async function readReminderCandidates(
  tx: Tx,
  companyId: string,
  notice: string,
  lastEarlyDay: string,
  afterBedId: string | null,
  limit: number,
): Promise<ReminderCandidate[]> {
  const beds = await tx.bedForecast.findMany({
    where: {
      companyId,
      due10Day: { lte: dateOf(lastEarlyDay) },
      bed: { reminders: { none: { notice, NOT: { state: 'dropped', stateReason: DROPPED_FOR_LEFT } } }, ...IN_SERVICE },
      ...(afterBedId ? { bedId: { gt: afterBedId } } : {}),
    },
    select: {
      bedId: true,
      siteId: true,
      due10Day: true,
      due90Day: true,
      site: { select: { street: true, town: true, tenures: { where: { toDay: null }, select: { customerId: true } } } },
      bed: {
        select: {
          jobs: { where: { kind: 'rebed', state: { in: ['proposed', 'booked', 'under-way', 'held'] } }, select: { state: true }, take: 1 },
        },
      },
    },
    orderBy: { bedId: 'asc' },
    take: limit,
  })
  const customerIds = beds.flatMap((bed) => bed.site.tenures.map((tenure) => tenure.customerId))
  const contacts = await tx.contact.findMany({
    where: { companyId, archivedAt: null, OR: [{ siteId: { in: beds.map((bed) => bed.siteId) } }, { customerId: { in: customerIds } }] },
    include: { consents: { select: { channel: true, granted: true } } },
  })
  return beds.map((bed) => {
    const holders = new Set(bed.site.tenures.map((tenure) => tenure.customerId))
    return {
      bedId: bed.bedId,
      siteId: bed.siteId,
      earlyDay: dayOf(bed.due10Day) ?? lastEarlyDay,
      lateDay: dayOf(bed.due90Day) ?? lastEarlyDay,
      jobState: bed.bed.jobs[0]?.state ?? null,
      contacts: contacts
        .filter((contact) => contact.siteId === bed.siteId || (contact.siteId === null && holders.has(contact.customerId)))
        .map(({ id, role, name, phone, email, deadEmail, consents }) => ({
          ...{ contactId: id, role, name, phone, consents },
          email: email === deadEmail ? null : email,
          letterAddress: Boolean(bed.site.street && bed.site.town),
        })),
    }
  })
}
