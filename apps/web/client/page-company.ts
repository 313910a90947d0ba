/** The headers that say for which company and person a page asks; `apps/web/server/page-company.ts` reads them. */
export const COMPANY_HEADER = 'x-almanac-company'
export const PERSON_HEADER = 'x-almanac-person'

let bound: Record<string, string> = {}

/** Ties this page to the company and the person it shows, until it is loaded again. On the server, where pages share a module, it does nothing. */
export function bindPage(companyId: string, personId: string): void {
  if (typeof window !== 'undefined') bound = { [COMPANY_HEADER]: companyId, [PERSON_HEADER]: personId }
}

/** What every request of this page carries. */
export const pageHeaders = (): Record<string, string> => bound
