import { exportProblems } from '@almanac/operations/imports/export-problems'
import { notFound } from '@almanac/runtime/errors'
import { withMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** The rows of an import to look at, as a CSV file. */
export function GET(request: Request, { params }: { params: Promise<{ id: string }> }) {
  return withMember(request, 'run:import', async ({ scope }) => {
    const { id } = await params
    if (!UUID.test(id)) throw notFound('import')
    const { fileName, bytes, encoding } = await exportProblems(scope, id)
    const plain = fileName.replace(/[^\w .-]/g, '_')
    return new Response(bytes, {
      headers: {
        'content-type': `text/csv; charset=${encoding}`,
        'content-disposition': `attachment; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(fileName)}`,
        'cache-control': 'no-store',
      },
    })
  })
}
