import { identityClient, type Tx } from '@almanac/database/client'
import { asAppError } from '@almanac/database/database-errors'
import { foundCompanyIn } from '@almanac/database/sql/found-company'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import type { Paper } from '@almanac/records/paper'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { endLinks, linkGone, makeLink, type OneTimeLink } from './one-time-link.ts'
import { createPerson, type FreshPerson, freshPerson } from './people.ts'

/** A company as it is founded; the contract has checked its parts. */
export type CompanyToFound = {
  name: string
  telephone: string | null
  locale: string
  unitSystem: 'us' | 'metric'
  timeZone: string
  currency: string
  paper: Paper
  dayStartMinute: number
  dayEndMinute: number
}

/** The address of a set-up page that founds one company, once. `onlyWhenEmpty`: null where a company exists; earlier links then end with the new one. */
export async function makeSetUpLink({ onlyWhenEmpty = false } = {}): Promise<{ url: string; expiresAt: Date } | null> {
  if (onlyWhenEmpty) {
    if ((await identityClient().company.count()) > 0) return null
    await endLinks({ purpose: 'set-up' })
  }
  const { token, expiresAt } = await makeLink({ purpose: 'set-up' })
  return { url: `${config().PUBLIC_URL}/set-up/${token}`, expiresAt }
}

/**
 * Founds a company with its settings and its owner, all or nothing, and uses the link up. The owner is someone new, or whoever is signed in. Throws `not-found`
 * for a link that was used meanwhile, `conflict` for an email that has a sign-in, `invalid` for a weak password.
 */
export async function foundCompany(
  link: OneTimeLink,
  company: CompanyToFound,
  owner: FreshPerson | { personId: string },
): Promise<{ companyId: string; personId: string }> {
  if ('email' in owner && link.email && owner.email !== link.email)
    throw new AppError('invalid', `This link was sent to ${link.email}. Nothing was saved; set the company up with that email.`)
  const person = 'email' in owner ? await freshPerson(owner, link.email === owner.email) : null
  const companyId = newId()
  const personId = person?.id ?? ('personId' in owner ? owner.personId : '')
  const ids = { companyId, settingsId: newId(), membershipId: newId(), auditId: newId() }
  const work = async (tx: Tx) => {
    if (person) await createPerson(tx, person)
    if (!(await foundCompanyIn(tx, link.tokenHash, personId, { ...company, ...ids }))) throw linkGone()
    await writeIdentityEvent('company-founded', { personId, companyId }, tx)
  }
  try {
    await identityClient().$transaction(work)
  } catch (error) {
    throw asAppError(error)
  }
  return { companyId, personId }
}
