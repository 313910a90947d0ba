import 'server-only'
import type { Who } from '@almanac/identity/who'
import { AppError } from '@almanac/runtime/errors'
import { wordsIn } from '@almanac/words/words-in'
import { COMPANY_HEADER, PERSON_HEADER } from '@/client/page-company'

/**
 * Refuses a request of a page that shows another company than the session now stands in, or another person: someone changed the company or signed in as somebody else
 * in another tab, or their membership ended. Without this, a command that names no record would land in the other firm, and what one person did under another's name.
 * A caller that sends no header has no page.
 */
export function checkPage(headers: Headers, who: Who): void {
  const [company, person] = [COMPANY_HEADER, PERSON_HEADER].map((name) => headers.get(name))
  if (company !== null && company !== who.company.id)
    throw new AppError(
      'conflict',
      `This page belongs to a different company than the one you’re in now, ${who.company.name}. Nothing was done; reload the page, or switch the company back.`,
      { otherCompany: true },
    )
  if (person !== null && person !== who.person.id)
    throw new AppError('conflict', (locale) => wordsIn(locale, 'refusal')('otherPerson'), { otherPerson: true })
}
