import { chooseWindow } from '@almanac/operations/jobs/confirm-window'
import { oneOf } from '@almanac/records/choices'
import { languages } from '@almanac/records/language'
import { AppError } from '@almanac/runtime/errors'
import { BODY_BYTES, bodyWithin } from '@/server/body'
import { offerPath } from '@/server/public-paths'
import { withPublicLink } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** Takes the customer's choice from the page's form, and shows the page again; what did not work is said there. Whatever is no such form is no choice. */
export async function POST(request: Request, { params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  return withPublicLink(request, 'arrival-windows', token, async ({ record: { companyId, id } }) => {
    const form = new URLSearchParams((await bodyWithin(request, BODY_BYTES.arrival)).toString('utf8'))
    const visitId = form.get('window') ?? ''
    const language = oneOf(languages, form.get('l'))
    const back = (answer?: 'none' | 'late') => {
      const query = new URLSearchParams({ ...(answer && { answer }), ...(language && { l: language }) }).toString()
      return new Response(null, { status: 303, headers: { location: `${offerPath(token)}${query ? `?${query}` : ''}` } })
    }
    if (!UUID.test(visitId)) return back('none')
    try {
      await chooseWindow({ companyId, offerId: id }, visitId)
      return back()
    } catch (error) {
      if (error instanceof AppError && error.code === 'conflict') return back('late')
      throw error
    }
  })
}
