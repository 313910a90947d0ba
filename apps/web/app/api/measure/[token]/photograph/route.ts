import { takePhotograph } from '@almanac/operations/guides/take-photograph'
import { oneOf } from '@almanac/records/choices'
import { guidePhotographKinds } from '@almanac/records/picture-kind'
import { AppError } from '@almanac/runtime/errors'
import { BODY_BYTES, bodyWithin } from '@/server/body'
import { answersOf, backToGuide, languageOfForm, textOf } from '@/server/guide-back'
import { withPublicLink } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

/** The form that a body holds; null for what is none. */
async function readForm(request: Request): Promise<FormData | null> {
  const bytes = await bodyWithin(request, BODY_BYTES.photograph)
  const type = request.headers.get('content-type') ?? ''
  if (!type.startsWith('multipart/form-data')) return null
  return new Response(new Uint8Array(bytes), { headers: { 'content-type': type } }).formData().catch(() => null)
}

/** Takes one photograph from the page’s form, and shows the page again; what could not be kept is said there. */
export async function POST(request: Request, { params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  return withPublicLink(request, 'measure', token, async ({ record: { companyId, id: guideId } }) => {
    let form: FormData | null
    try {
      form = await readForm(request)
    } catch (error) {
      if (error instanceof AppError && error.code === 'too-large') return backToGuide(token, null, { said: 'too-large' })
      throw error
    }
    const kind = form && oneOf(guidePhotographKinds, textOf(form, 'kind'))
    const picture = form?.get('picture')
    if (!form || !kind || !(picture instanceof Blob)) return backToGuide(token, form && languageOfForm(form), { said: 'no-picture' })
    const bytes = new Uint8Array(await picture.arrayBuffer())
    const taken = await takePhotograph({ companyId, guideId }, { kind, bytes, answers: answersOf(form) })
    const at: Record<string, string> = textOf(form, 'at') === 'photographs' ? { step: 'photographs' } : {}
    return backToGuide(token, languageOfForm(form), taken === 'gone' ? {} : { ...at, said: taken })
  })
}
