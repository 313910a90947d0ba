import { type OwnerAct, ownerActs } from '@almanac/operations/guides/owner-steps'
import { proposeIn } from '@almanac/operations/jobs/propose-job'
import { oneOf } from '@almanac/records/choices'
import { guideEnds } from '@almanac/records/guide-state'
import { BODY_BYTES, bodyWithin } from '@/server/body'
import { answersOf, backToGuide, languageOfForm, textOf } from '@/server/guide-back'
import { withPublicLink } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

/** What a form asks for; null for what is no such form. */
function readAct(form: URLSearchParams): OwnerAct | null {
  const kind = textOf(form, 'do')
  if (kind === 'visit') return { kind }
  if (kind === 'next') return { kind, step: textOf(form, 'step'), answers: answersOf(form) }
  const end = oneOf(guideEnds, textOf(form, 'end'))
  return kind === 'ended' && end ? { kind, end } : null
}

/** Takes what an owner pressed on the page: on to the next step, a visit instead, or how the water is. Whatever is no such form changes nothing. */
export async function POST(request: Request, { params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  return withPublicLink(request, 'measure', token, async ({ record: { companyId, id: guideId } }) => {
    const form = new URLSearchParams((await bodyWithin(request, BODY_BYTES.arrival)).toString('utf8'))
    const act = readAct(form)
    const acted = act ? await ownerActs({ companyId, guideId }, act, proposeIn) : 'missing'
    return backToGuide(token, languageOfForm(form), acted === 'missing' ? { said: 'missing' } : {})
  })
}
