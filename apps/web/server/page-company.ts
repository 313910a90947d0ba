import 'server-only'
import type { Who } from '@almanac/identity/who'
import { AppError } from '@almanac/runtime/errors'
import { COMPANY_HEADER } from '@/client/page-company'

/**
 * Refuses a request of a page that shows another company than the session now stands in: someone changed the company in another tab, or their
 * membership ended. Without this, a command that names no record would land in the other firm. A caller that sends no header has no page.
 */
export function checkPageCompany(headers: Headers, who: Who): void {
  const page = headers.get(COMPANY_HEADER)
  if (page !== null && page !== who.company.id)
    throw new AppError(
      'conflict',
      `This page belongs to a different company than the one you’re in now, ${who.company.name}. Nothing was done; reload the page, or switch the company back.`,
      { otherCompany: true },
    )
}
