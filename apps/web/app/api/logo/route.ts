import { openLetterhead } from '@almanac/operations/shared/open-letterhead'
import { notFound } from '@almanac/runtime/errors'
import { withMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

/** The company's logo, for its own people: settings show it, and day sheets print it. */
export function GET(request: Request) {
  return withMember(request, 'read:job', async ({ scope }) => {
    const { logo } = await openLetterhead(scope)
    if (!logo) throw notFound('logo')
    return new Response(Buffer.from(logo.png), {
      headers: {
        'content-type': 'image/png',
        'content-disposition': 'inline',
        'x-content-type-options': 'nosniff',
        'cache-control': 'no-store',
      },
    })
  })
}
