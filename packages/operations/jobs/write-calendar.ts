import { readFeedVisits } from '@almanac/database/read/calendar-feeds'
import { readPublicOffer } from '@almanac/database/read/window-offers'
import { calendarFile } from '@almanac/messages/calendar-file'
import type { JobKind } from '@almanac/records/job-kind'
import { now } from '@almanac/runtime/clock'
import { formatClock } from '@almanac/units/format-clock'
import { wordsIn } from '@almanac/words/words-in'

const title = (kind: string, locale: string) => wordsIn(locale, 'jobKind')(kind as JobKind)
const REFRESH_MINUTES = 15

/**
 * A colleague's visits, or all of a company's, as a calendar; null once the address has ended, or whoever asked for it is no longer in the office (`inOffice`).
 * Places yes, names and telephones of customers no.
 */
export async function writeFeedCalendar(
  feed: { companyId: string; feedId: string },
  inOffice: (personId: string) => Promise<boolean>,
): Promise<string | null> {
  const found = await readFeedVisits(feed)
  if (!found || (found.personId !== null && !(await inOffice(found.personId)))) return null
  const appointments = found.visits.map((visit) => {
    const { site, kind } = visit.job
    return {
      uid: `${visit.id}@rebed-almanac`,
      revision: visit.version,
      startsAt: visit.startsAt,
      endsAt: visit.endsAt,
      title: `${title(kind, found.locale)}, ${site.label}`,
      place: [site.street ?? site.label, site.town].filter(Boolean).join(', '),
      words: visit.crewDay.name,
    }
  })
  const name = found.colleagueName === null ? found.companyName : `${found.companyName}: ${found.colleagueName}`
  return calendarFile({ name, refreshMinutes: REFRESH_MINUTES, appointments }, now())
}

/** The window a customer chose, as a calendar file; null when none is chosen or the visit was called off. */
export async function writeCustomerCalendar(offer: { companyId: string; offerId: string }): Promise<string | null> {
  const found = await readPublicOffer(offer, now())
  if (!found?.chosen) return null
  const { chosen, companyName, place, kind, locale } = found
  const [from, until] = [new Date(chosen.from), new Date(chosen.until)]
  const appointment = {
    uid: `${chosen.visitId}@rebed-almanac`,
    revision: 1,
    startsAt: from,
    endsAt: until,
    title: `${companyName}: ${title(kind, locale)}`,
    place,
    words: wordsIn(locale, 'letter')('appointment', { from: formatClock(from, found), until: formatClock(until, found) }),
  }
  return calendarFile({ name: companyName, appointments: [appointment] }, now())
}
