import { now } from '@almanac/runtime/clock'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { dayIn, instantIn } from '@almanac/units/calendar/zone-clock'
import { inCompany, type Scope } from '../in-company.ts'

/** How far a calendar looks back and ahead, days. */
const BACK_DAYS = 30
const AHEAD_DAYS = 120

/** The caller's calendar addresses in use, of their own visits and of all day sheets, and whether they stand on day sheets at all. */
export async function readOwnFeeds(scope: Scope & { personId: string }) {
  return inCompany(scope, async (tx) => {
    const { companyId, personId } = scope
    const colleague = await tx.colleague.findFirst({
      where: { companyId, personId, archivedAt: null },
      select: { id: true },
    })
    const feeds = await tx.calendarFeed.findMany({
      where: { companyId, endedAt: null, OR: [{ personId }, ...(colleague ? [{ colleagueId: colleague.id }] : [])] },
      orderBy: { createdAt: 'asc' },
    })
    return {
      onSheets: colleague !== null,
      feeds: feeds.map(({ id, version, createdAt, personId: office }) => ({
        ...{ of: office === null ? ('own' as const) : ('office' as const), id, version, createdAt: createdAt.toISOString() },
      })),
    }
  })
}

/**
 * The visits behind a calendar address: one colleague's, or all of the company's, with whom it is then of. Null once it has ended, or its colleague has left. No
 * customer's name or telephone.
 */
export async function readFeedVisits({ companyId, feedId }: { companyId: string; feedId: string }) {
  return inCompany({ companyId }, async (tx) => {
    const feed = await tx.calendarFeed.findFirst({
      where: { companyId, id: feedId, endedAt: null, OR: [{ colleague: { archivedAt: null } }, { personId: { not: null } }] },
      select: { colleagueId: true, personId: true, colleague: { select: { name: true } } },
    })
    if (!feed) return null
    const { name, timeZone, locale } = await tx.company.findUniqueOrThrow({
      where: { id: companyId },
      select: { name: true, timeZone: true, locale: true },
    })
    const today = dayIn(timeZone, now())
    const visits = await tx.visit.findMany({
      where: {
        companyId,
        startsAt: { gte: instantIn(timeZone, addDays(today, -BACK_DAYS), 0), lt: instantIn(timeZone, addDays(today, AHEAD_DAYS), 0) },
        state: { in: ['booked', 'under-way', 'closed'] },
        ...(feed.colleagueId !== null && { assignments: { some: { colleagueId: feed.colleagueId, released: false } } }),
      },
      select: {
        ...{ id: true, version: true, startsAt: true, endsAt: true },
        crewDay: { select: { name: true } },
        job: { select: { kind: true, site: { select: { label: true, street: true, town: true } } } },
      },
      orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
      take: feed.colleagueId === null ? 5000 : 1000,
    })
    return { companyName: name, timeZone, locale, colleagueName: feed.colleague?.name ?? null, personId: feed.personId, visits }
  })
}
