import { pictureSoFar, receivePicture } from '@almanac/operations/pictures/receive-picture'
import { AppError, notFound } from '@almanac/runtime/errors'
import { piecesWithin } from '@/server/body'
import type { SignedContext } from '@/server/context'
import { withMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

// The core of the open protocol tus 1.0.0 (tus.io): HEAD says how much is here, PATCH brings what follows. A picture is begun by its own command, pictures.begin.
const VERSION = '1.0.0'
const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

type Route = { params: Promise<{ id: string }> }
type Progress = { offset: number; length: number }

function answer(request: Request, { params }: Route, status: number, work: (context: SignedContext, id: string) => Promise<Progress>) {
  return withMember(request, 'close:visit', async (context) => {
    const { id } = await params
    if (!UUID.test(id)) throw notFound('picture')
    const { offset, length } = await work(context, id)
    return new Response(null, {
      status,
      headers: { 'tus-resumable': VERSION, 'upload-offset': `${offset}`, 'upload-length': `${length}`, 'cache-control': 'no-store' },
    })
  })
}

/** How much of a picture is here, of how much. */
export function HEAD(request: Request, route: Route) {
  return answer(request, route, 200, ({ scope }, id) => pictureSoFar(scope, id))
}

/** Takes the bytes that follow on `Upload-Offset`. */
export function PATCH(request: Request, route: Route) {
  return answer(request, route, 204, ({ scope }, id) => {
    const offset = request.headers.get('upload-offset') ?? ''
    const type = request.headers.get('content-type')
    if (!/^\d{1,9}$/.test(offset) || type !== 'application/offset+octet-stream')
      throw new AppError('invalid', 'The request doesn’t say where its bytes belong. Nothing was saved; send it again.')
    return receivePicture(scope, id, Number(offset), (most) =>
      piecesWithin(
        request,
        most,
        new AppError('too-large', 'More was sent than the picture holds. Nothing more was saved; send it again.'),
      ),
    )
  })
}
