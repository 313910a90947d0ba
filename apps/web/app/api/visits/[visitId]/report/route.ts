import { readFirmFigures } from '@almanac/database/read/firm-figures'
import { readServiceReport } from '@almanac/database/read/service-report'
import { renderServiceReport, reportFileName } from '@almanac/documents/service-report/render-service-report'
import { fileStore } from '@almanac/files/file-store'
import { printedPhotograph } from '@almanac/files/printed-photograph'
import { openLetterhead } from '@almanac/operations/firm/open-letterhead'
import { notFound } from '@almanac/runtime/errors'
import { mergeFigures } from '@almanac/softener/firm/merge-figures'
import { withMember } from '@/server/route-handler'
import { reportFacts } from '@/server/service-report'

export const dynamic = 'force-dynamic'

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** The service report of a visit that was closed, as a PDF in its customer's language. */
export function GET(request: Request, { params }: { params: Promise<{ visitId: string }> }) {
  return withMember(request, 'read:job', async ({ scope }) => {
    const { visitId } = await params
    if (!UUID.test(visitId)) throw notFound('visit')
    const record = await readServiceReport(scope, visitId)
    const { figures } = mergeFigures((await readFirmFigures(scope)).filter((row) => row.inUse))
    const facts = await reportFacts(record, await openLetterhead(scope), figures, async (id, kind) => {
      const bytes = await fileStore().get({ companyId: scope.companyId, id })
      return bytes && kind === 'photograph' ? printedPhotograph(bytes) : bytes
    })
    return new Response(await renderServiceReport(facts), {
      headers: {
        'content-type': 'application/pdf',
        'content-disposition': `attachment; filename="${reportFileName(facts)}"`,
        'cache-control': 'no-store',
      },
    })
  })
}
