import { bedRenewingKinds } from '@almanac/records/job-kind'
import type { Tx } from '../client.ts'
import { dateOf, dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
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
export const readReminderCandidates = (
  tx: Tx,
  companyId: string,
  notice: string,
  lastEarlyDay: string,
  afterBedId: string | null,
  limit: number,
): Promise<ReminderCandidate[]> =>
  readCandidatesOf(
    tx,
    companyId,
    lastEarlyDay,
    {
      bed: { reminders: { none: { notice, NOT: { state: 'dropped', stateReason: DROPPED_FOR_LEFT } } } },
      ...(afterBedId ? { bedId: { gt: afterBedId } } : {}),
    },
    limit,
  )

/** Beds of which somebody was told who is at the site no more, with the tenure of whoever is there now and was told nothing of them, nor is about to be. */
export const readToldBefore = (tx: Tx, companyId: string): Promise<{ bedId: string; tenureId: string }[]> =>
  tx.$queryRaw<{ bedId: string; tenureId: string }[]>`
    select distinct on (r.bed_id) r.bed_id as "bedId", t.id as "tenureId"
    from reminder r
    join contact c on c.company_id = r.company_id and c.id = r.contact_id
    join tenure t on t.company_id = r.company_id and t.site_id = r.site_id and t.to_day is null
    where r.company_id = ${companyId}::uuid and r.state = 'released'
      and c.customer_id is distinct from t.customer_id and c.site_id is distinct from r.site_id
      and not exists (select from reminder o join contact k on k.company_id = o.company_id and k.id = o.contact_id
        where o.company_id = r.company_id and o.bed_id = r.bed_id and o.state <> 'dropped'
          and (k.customer_id = t.customer_id or k.site_id = r.site_id))
    order by r.bed_id, t.id`

/** The beds that a condition names, with windows that begin by `lastEarlyDay`, and the people one could tell of each. */
export async function readCandidatesOf(
  tx: Tx,
  companyId: string,
  lastEarlyDay: string,
  where: Prisma.BedForecastWhereInput,
  limit?: number,
): Promise<ReminderCandidate[]> {
  const beds = await tx.bedForecast.findMany({
    where: { AND: [{ companyId, due10Day: { lte: dateOf(lastEarlyDay) }, bed: IN_SERVICE }, where] },
    select: {
      bedId: true,
      siteId: true,
      due10Day: true,
      due90Day: true,
      site: { select: { street: true, town: true, tenures: { where: { toDay: null }, select: { customerId: true } } } },
      bed: {
        select: {
          jobs: {
            where: { kind: { in: [...bedRenewingKinds] }, state: { in: ['proposed', 'booked', 'under-way', 'held'] } },
            select: { state: true },
            take: 1,
          },
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
