import { writeFeedCalendar } from '@almanac/operations/jobs/write-calendar'
import { calendarAnswer, withPublicLink } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

/** A colleague's visits, for the calendar program that subscribed to this address. */
export async function GET(request: Request, { params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  return withPublicLink(request, 'calendar', token, async ({ record: { companyId, id } }) =>
    calendarAnswer(await writeFeedCalendar({ companyId, feedId: id }), 'visits.ics'),
  )
}
