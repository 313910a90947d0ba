import { identityClient } from '@almanac/database/client'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import type { Role } from '@almanac/records/role'
import { now } from '@almanac/runtime/clock'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { changingPeople } from './members.ts'
import { endLinks, linkGone, makeLink, type OneTimeLink, spendLink } from './one-time-link.ts'
import { createPerson, type FreshPerson, freshPerson } from './people.ts'
import type { Who } from './who.ts'

export type Invitation = {
  id: string
  name: string | null
  email: string | null
  role: Role
  colleagueId: string | null
  expiresAt: string
}

/** The invitations of a company that still work, the newest first. */
export async function listInvitations(companyId: string): Promise<Invitation[]> {
  const rows = await identityClient().oneTimeLink.findMany({
    where: { purpose: 'invitation', companyId, usedAt: null, endedAt: null, expiresAt: { gt: now() } },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  })
  return rows.map(({ id, name, email, role, colleagueId, expiresAt }) => ({
    ...{ id, name, email, role: role as Role, colleagueId },
    expiresAt: expiresAt.toISOString(),
  }))
}

/** Invites someone: the token of a link that is theirs alone. To the same email again: the earlier link ends. */
export async function invite(
  who: Who,
  given: { name: string; email: string | null; role: Role; colleagueId: string | null },
): Promise<{ token: string; expiresAt: Date }> {
  const companyId = who.company.id
  return changingPeople(async (tx) => {
    if (given.email) {
      const there = await tx.membership.findFirst({
        where: { companyId, endedAt: null, person: { email: given.email } },
        select: { id: true },
      })
      if (there) throw new AppError('conflict', `Someone with the email ${given.email} is in the company already. Nobody was invited.`)
      await endLinks({ purpose: 'invitation', companyId, email: given.email }, tx)
    }
    await writeIdentityEvent('invited', { personId: null, companyId, byPersonId: who.person.id, word: given.role }, tx)
    return makeLink({ purpose: 'invitation', companyId, madeBy: who.person.id, ...given }, tx)
  })
}

/** Takes an invitation back: its link works no longer. */
export async function withdrawInvitation(who: Who, id: string): Promise<void> {
  const companyId = who.company.id
  await changingPeople(async (tx) => {
    if ((await endLinks({ purpose: 'invitation', companyId, id }, tx)) === 0) throw notFound('invitation')
    await writeIdentityEvent('invitation-withdrawn', { personId: null, companyId, byPersonId: who.person.id }, tx)
  })
}

/**
 * Lets the holder of an invitation in, all or nothing, and uses it up: whoever is signed in, or someone new. Throws `not-found` for a link that was used meanwhile,
 * `conflict` for an email that has a sign-in or for someone who is in the company already, `invalid` for a weak password.
 */
export async function acceptInvitation(link: OneTimeLink, given: FreshPerson | { personId: string }): Promise<string> {
  const { company, role } = link
  if (!company || !role) throw linkGone()
  if ('email' in given && link.email && given.email !== link.email)
    throw new AppError('invalid', `This invitation was sent to ${link.email}. Nothing was saved; join with that email.`)
  const fresh = 'email' in given ? await freshPerson(given, link.email === given.email) : null
  const personId = fresh?.id ?? ('personId' in given ? given.personId : '')
  await changingPeople(async (tx) => {
    if (fresh) await createPerson(tx, fresh)
    await spendLink(tx, link.id, personId)
    const there = await tx.membership.findUnique({ where: { personId_companyId: { personId, companyId: company.id } } })
    if (there && !there.endedAt)
      throw new AppError('conflict', `You are in ${company.name} already. Nothing was changed; an owner can give you another role.`)
    await tx.membership.upsert({
      where: { personId_companyId: { personId, companyId: company.id } },
      create: { id: newId(), personId, companyId: company.id, role },
      update: { role, endedAt: null },
    })
    await writeIdentityEvent('joined', { personId, companyId: company.id, word: role }, tx)
  })
  return personId
}
