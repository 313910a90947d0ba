import { readPaperPlan } from '@almanac/database/read/bed-plan'
import { readFirmFigures } from '@almanac/database/read/firm-figures'
import { readPlannedVisit } from '@almanac/database/read/planned-visit'
import { planFileName, renderRebedPlan } from '@almanac/documents/rebed-plan/render-rebed-plan'
import { openLetterhead } from '@almanac/operations/shared/open-letterhead'
import { now } from '@almanac/runtime/clock'
import { notFound } from '@almanac/runtime/errors'
import { mergeFigures } from '@almanac/softener/firm/merge-figures'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { planFacts } from '@/server/rebed-plan'
import { withMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

/** The rebed plan of a bed in service, or of a tank that was left without its bed, as a PDF of three sheets. */
export function GET(request: Request, { params }: { params: Promise<{ bedId: string }> }) {
  return withMember(request, 'read:site', async ({ scope, who }) => {
    const { bedId } = await params
    if (!UUID.test(bedId)) throw notFound('bed in service')
    const { plan, emptied } = await readPaperPlan(scope, bedId)
    const { figures } = mergeFigures((await readFirmFigures(scope)).filter((row) => row.inUse))
    const visit = await readPlannedVisit(scope, bedId)
    const { logo } = await openLetterhead(scope)
    const facts = planFacts(plan, who.company, figures, dayIn(who.company.timeZone, now()), { visit, emptied, logo })
    return new Response(await renderRebedPlan(facts), {
      headers: {
        'content-type': 'application/pdf',
        'content-disposition': `attachment; filename="${planFileName(facts.site.label)}"`,
        'cache-control': 'no-store',
      },
    })
  })
}
