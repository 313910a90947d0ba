import { openMailedReport } from '@almanac/operations/reminders/open-mailed-report'
import { notFound } from '@almanac/runtime/errors'
import { withMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** A service report as it was mailed. */
export function GET(request: Request, { params }: { params: Promise<{ id: string }> }) {
  return withMember(request, 'read:job', async ({ scope }) => {
    const { id } = await params
    if (!UUID.test(id)) throw notFound('report')
    const { bytes, name } = await openMailedReport(scope, id)
    return new Response(Buffer.from(bytes), {
      headers: {
        'content-type': 'application/pdf',
        'content-disposition': `attachment; filename="${name}"`,
        'cache-control': 'no-store',
      },
    })
  })
}
