import { identityClient } from '@almanac/database/client'
import { notFound } from '@almanac/runtime/errors'
import type { Who } from './who.ts'

/** Sets the session to another company of the same person. A company they are not in is answered like one that does not exist. */
export async function switchCompany(who: Who, companyId: string): Promise<void> {
  if (!who.companies.some((one) => one.id === companyId)) throw notFound('company')
  await identityClient().session.update({ where: { id: who.sessionId }, data: { activeCompanyId: companyId } })
}
