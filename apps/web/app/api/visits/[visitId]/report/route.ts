import { reportFileName } from '@almanac/documents/service-report/render-service-report'
import { renderReport } from '@almanac/operations/reminders/render-report'
import { notFound } from '@almanac/runtime/errors'
import { withMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** The service report of a visit that was closed, as a PDF in its customer's language. */
export function GET(request: Request, { params }: { params: Promise<{ visitId: string }> }) {
  return withMember(request, 'read:job', async ({ scope }) => {
    const { visitId } = await params
    if (!UUID.test(visitId)) throw notFound('visit')
    const { facts, pdf } = await renderReport(scope, visitId)
    return new Response(pdf, {
      headers: {
        'content-type': 'application/pdf',
        'content-disposition': `attachment; filename="${reportFileName(facts)}"`,
        'cache-control': 'no-store',
      },
    })
  })
}
