import { Readable } from 'node:stream'
import { openExport } from '@almanac/operations/keeping/open-export'
import { notFound } from '@almanac/runtime/errors'
import { withMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** A finished archive of everything, sent from the disk a piece at a time. */
export function GET(request: Request, { params }: { params: Promise<{ id: string }> }) {
  return withMember(request, 'manage:company', async ({ scope }) => {
    const { id } = await params
    if (!UUID.test(id)) throw notFound('export')
    const { fileName, bytes, content } = await openExport(scope, id)
    return new Response(Readable.toWeb(content) as ReadableStream, {
      headers: {
        'content-type': 'application/zip',
        'content-length': String(bytes),
        'content-disposition': `attachment; filename="${fileName}"`,
        'cache-control': 'no-store',
      },
    })
  })
}
