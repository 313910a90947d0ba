import { readLettersToPrint } from '@almanac/database/read/letters-to-print'
import { renderLetters } from '@almanac/documents/letters/render-letters'
import { openLetterhead } from '@almanac/operations/shared/open-letterhead'
import { oneOf } from '@almanac/records/choices'
import { languageOf, languages, localeFor } from '@almanac/records/language'
import { now } from '@almanac/runtime/clock'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { formatDay } from '@almanac/units/format-day'
import { withMember } from '@/server/route-handler'

export const dynamic = 'force-dynamic'

/** The approved letters for window envelopes, as one PDF; whoever posts them marks them as sent. */
export function GET(request: Request) {
  return withMember(request, 'send:message', async ({ scope, who: { company } }) => {
    const letters = await readLettersToPrint(scope)
    // Whoever has just marked them as sent, or comes by an old link, is back at the list.
    if (letters.length === 0) return new Response(null, { status: 303, headers: { location: '/reminders?view=outbox' } })
    const today = dayIn(company.timeZone, now())
    const pdf = await renderLetters(
      letters.map(({ contact, ...letter }) => ({
        ...letter,
        day: formatDay(today, { locale: localeFor(oneOf(languages, contact.language), company.locale) }),
      })),
      { ...(await openLetterhead(scope)), paper: company.paper, language: languageOf(company.locale) },
    )
    return new Response(pdf, {
      headers: {
        'content-type': 'application/pdf',
        'content-disposition': 'attachment; filename="letters.pdf"',
        'cache-control': 'no-store',
      },
    })
  })
}
