import { mayNow } from '@almanac/identity/who'
import { writeFeedCalendar } from '@almanac/operations/jobs/write-calendar'
import { calendarAnswer, withPublicLink } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

/** A colleague's visits, or the office's day sheets, for the calendar program that subscribed to this address. */
export async function GET(request: Request, { params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  return withPublicLink(request, 'calendar', token, async ({ record: { companyId, id } }) =>
    calendarAnswer(
      await writeFeedCalendar({ companyId, feedId: id }, (personId) => mayNow(personId, companyId, 'book:visit')),
      'visits.ics',
    ),
  )
}
