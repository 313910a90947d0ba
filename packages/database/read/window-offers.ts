import type { JobKind } from '@almanac/records/job-kind'
import { type Language, localeFor } from '@almanac/records/language'
import type { OfferState } from '@almanac/records/window-offer'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'

const WINDOWS = {
  where: { state: { in: ['offered', 'booked'] } },
  orderBy: [{ startsAt: 'asc' as const }, { id: 'asc' as const }],
  include: { crewDay: { select: { name: true, day: true } } },
}

type OfferRow = NonNullable<Awaited<ReturnType<typeof findOffer>>>

const findOffer = (tx: Tx, companyId: string, id: string) =>
  tx.windowOffer.findUnique({
    where: { companyId_id: { companyId, id } },
    include: { visits: WINDOWS, job: { select: { kind: true, site: { select: { id: true, label: true, street: true, town: true } } } } },
  })

const windowsOf = (offer: Pick<OfferRow, 'visits'>) =>
  offer.visits.flatMap((visit) =>
    visit.arriveFrom && visit.arriveUntil
      ? [
          {
            visitId: visit.id,
            day: dayOf(visit.crewDay.day),
            from: visit.arriveFrom.toISOString(),
            until: visit.arriveUntil.toISOString(),
            startsAt: visit.startsAt.toISOString(),
            crewName: visit.crewDay.name,
            state: visit.state,
          },
        ]
      : [],
  )

/** What is offered for a job at an instant; null when nothing is, or its time has passed. */
export async function readJobOffer(scope: Pick<Scope, 'companyId'>, jobId: string, at: Date) {
  return inCompany(scope, async (tx) => {
    const offer = await tx.windowOffer.findFirst({
      where: { companyId: scope.companyId, jobId, state: 'open', expiresAt: { gt: at } },
      include: { visits: WINDOWS },
    })
    if (!offer) return null
    const { id, version, expiresAt } = offer
    return { id, version, jobId, expiresAt: expiresAt.toISOString(), windows: windowsOf(offer) }
  })
}

/** The language of whoever lives at a site or, where nobody said, of who pays there; null where neither did. */
async function languageAt(tx: Tx, companyId: string, siteId: string): Promise<Language | null> {
  const contacts = await tx.contact.findMany({
    where: {
      companyId,
      archivedAt: null,
      language: { not: null },
      OR: [{ siteId }, { siteId: null, customer: { tenures: { some: { siteId, toDay: null } } } }],
    },
    select: { role: true, language: true },
    orderBy: { id: 'asc' },
  })
  return ((contacts.find((one) => one.role === 'occupier') ?? contacts[0])?.language ?? null) as Language | null
}

/** What the customer's link shows: the firm, the place, the windows and what became of them. No names of people. `locale` is the customer's. */
export async function readPublicOffer({ companyId, offerId }: { companyId: string; offerId: string }, at: Date) {
  return inCompany({ companyId }, async (tx) => {
    const offer = await findOffer(tx, companyId, offerId)
    if (!offer) return null
    const company = await tx.company.findUniqueOrThrow({
      where: { id: companyId },
      select: { name: true, timeZone: true, locale: true, telephone: true },
    })
    const { name, timeZone, telephone } = company
    const { site, kind } = offer.job
    const locale = localeFor(await languageAt(tx, companyId, site.id), company.locale)
    const windows = windowsOf(offer)
    const state = offer.state === 'open' && offer.expiresAt <= at ? 'lapsed' : (offer.state as OfferState)
    const place = [site.street ?? site.label, site.town].filter(Boolean).join(', ')
    // A visit that was moved out of its window is not the one that was chosen.
    const chosen =
      offer.state === 'confirmed'
        ? (windows.find((one) => one.state === 'booked' && one.startsAt >= one.from && one.startsAt <= one.until) ?? null)
        : null
    const expiresAt = offer.expiresAt.toISOString()
    return { companyName: name, telephone, timeZone, locale, kind: kind as JobKind, place, state, expiresAt, windows, chosen }
  })
}
