import { takeEntry } from '@almanac/operations/guides/guide-link'
import { oneOf } from '@almanac/records/choices'
import { guideMeasures } from '@almanac/records/guide-measure'
import { BODY_BYTES, bodyWithin } from '@/server/body'
import { backToGuide, languageOfForm } from '@/server/guide-back'
import { withPublicLink } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

const MOST_SIGNS = 40

/** Takes one measurement from the page's form, and shows the next; what could not be read is asked again. Whatever is no such form changes nothing. */
export async function POST(request: Request, { params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  return withPublicLink(request, 'measure', token, async ({ record: { companyId, id: guideId } }) => {
    const form = new URLSearchParams((await bodyWithin(request, BODY_BYTES.arrival)).toString('utf8'))
    const language = languageOfForm(form)
    const back = (more: Record<string, string>) => backToGuide(token, language, more)
    const measure = oneOf(guideMeasures, form.get('measure'))
    if (!measure) return back({})
    const text = (form.get('value') ?? '').slice(0, MOST_SIGNS)
    const taken = await takeEntry({ companyId, guideId }, measure, text, form.get('unit') === 'cm' ? 'cm' : 'in', language)
    if (taken === 'unread' || taken === 'impossible') return back({ step: measure, said: taken })
    const next = guideMeasures[guideMeasures.indexOf(measure) + 1]
    return back({ step: next ?? 'end' })
  })
}
