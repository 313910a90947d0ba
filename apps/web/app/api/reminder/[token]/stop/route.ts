import { proposeIn } from '@almanac/operations/jobs/propose-job'
import { answerReminder } from '@almanac/operations/reminders/answer-reminder'
import { reminderPath } from '@/server/public-paths'
import { withPublicLink } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

type Params = { params: Promise<{ token: string }> }

/** Takes somebody off the list with one click (RFC 8058): a mail program posts here by itself, without a session or a page. */
export async function POST(request: Request, { params }: Params) {
  const { token } = await params
  return withPublicLink(request, 'reminder', token, async ({ record: { companyId, id: reminderId } }) => {
    await answerReminder({ companyId, reminderId }, { kind: 'stop' }, proposeIn)
    return new Response(null, { status: 204 })
  })
}

/** Followed as a plain link, perhaps by a scanner of mails: it shows the page and changes nothing. */
export async function GET(request: Request, { params }: Params) {
  const { token } = await params
  return withPublicLink(
    request,
    'reminder',
    token,
    async () => new Response(null, { status: 303, headers: { location: reminderPath(token) } }),
  )
}
