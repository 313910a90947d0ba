/** The header that says for which company a page asks; `apps/web/server/page-company.ts` reads it. */
export const COMPANY_HEADER = 'x-almanac-company'

let company = ''

/** Ties this page to the company it shows, until it is loaded again. On the server, where pages share a module, it does nothing. */
export function bindPage(companyId: string): void {
  if (typeof window !== 'undefined') company = companyId
}

/** What every request of this page carries. */
export const pageHeaders = (): Record<string, string> => (company ? { [COMPANY_HEADER]: company } : {})
