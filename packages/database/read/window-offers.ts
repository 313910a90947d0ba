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
    include: { visits: WINDOWS, job: { select: { kind: true, site: { select: { label: true, street: true, town: true } } } } },
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

/** What the customer's link shows: the firm, the place, the windows and what became of them. No names of people. */
export async function readPublicOffer({ companyId, offerId }: { companyId: string; offerId: string }, at: Date) {
  return inCompany({ companyId }, async (tx) => {
    const offer = await findOffer(tx, companyId, offerId)
    if (!offer) return null
    const { name, timeZone } = await tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { name: true, timeZone: true } })
    const { site, kind } = offer.job
    const windows = windowsOf(offer)
    const state = offer.state === 'open' && offer.expiresAt <= at ? 'lapsed' : (offer.state as OfferState)
    const place = [site.street ?? site.label, site.town].filter(Boolean).join(', ')
    const chosen = offer.state === 'confirmed' ? (windows.find((one) => one.state === 'booked') ?? null) : null
    return { companyName: name, timeZone, kind, place, state, expiresAt: offer.expiresAt.toISOString(), windows, chosen }
  })
}
