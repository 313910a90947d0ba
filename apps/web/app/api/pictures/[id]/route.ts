import { openPicture } from '@almanac/operations/pictures/open-picture'
import { notFound } from '@almanac/runtime/errors'
import { withMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** One picture of a visit, for the company's people alone. */
export function GET(request: Request, { params }: { params: Promise<{ id: string }> }) {
  return withMember(request, 'read:job', async ({ scope }) => {
    const { id } = await params
    if (!UUID.test(id)) throw notFound('picture')
    const { bytes, contentType } = await openPicture(scope, id)
    return new Response(Buffer.from(bytes), {
      headers: {
        'content-type': contentType,
        'content-length': String(bytes.byteLength),
        'content-disposition': 'inline',
        'x-content-type-options': 'nosniff',
        // Somebody may be erased: no copy stays behind in a browser.
        'cache-control': 'no-store',
      },
    })
  })
}
