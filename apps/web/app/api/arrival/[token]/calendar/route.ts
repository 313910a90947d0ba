import { writeCustomerCalendar } from '@almanac/operations/jobs/write-calendar'
import { calendarAnswer, withPublicLink } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

/** The arrival window the customer chose, as a calendar file. */
export async function GET(request: Request, { params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  return withPublicLink(request, 'arrival-windows', token, async ({ record: { companyId, id } }) =>
    calendarAnswer(await writeCustomerCalendar({ companyId, offerId: id }), 'visit.ics'),
  )
}
