import { identityClient } from '@almanac/database/client'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import { notFound } from '@almanac/runtime/errors'
import type { SignedInPerson, Who } from './who.ts'

/** Sets the session to another company of the same person. A company they are not in is answered like one that does not exist. */
export async function switchCompany(who: Who, companyId: string): Promise<void> {
  if (!who.companies.some((one) => one.id === companyId)) throw notFound('company')
  await showCompany({ id: who.person.id, sessionId: who.sessionId }, companyId)
}

/** Sets a session to a company that its person has just come into. */
export async function showCompany({ id, sessionId }: Pick<SignedInPerson, 'id' | 'sessionId'>, companyId: string): Promise<void> {
  await identityClient().session.update({ where: { id: sessionId }, data: { activeCompanyId: companyId } })
  await writeIdentityEvent('company-changed', { personId: id, sessionId, companyId })
}
