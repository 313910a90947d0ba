import { identityClient, type Tx } from '@almanac/database/client'
import { asAppError } from '@almanac/database/database-errors'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import type { Role } from '@almanac/records/role'
import { now } from '@almanac/runtime/clock'
import { AppError, notFound } from '@almanac/runtime/errors'
import { type Device, deviceOf } from './device.ts'
import { endLinks, makeLink } from './one-time-link.ts'
import type { Who } from './who.ts'

export type MemberSession = { id: string; device: Device; startedAt: string }
export type Member = {
  personId: string
  name: string
  email: string
  role: Role
  /** They work for other companies here too: what is theirs alone is not this owner's to change. */
  elsewhere: boolean
  sessions: MemberSession[]
}

/** In one transaction; what the database refuses is said in words. */
export async function changingPeople<T>(work: (tx: Tx) => Promise<T>): Promise<T> {
  try {
    return await identityClient().$transaction(work)
  } catch (error) {
    throw asAppError(error)
  }
}

/** A company's people who sign in, by name, with the sessions that are in this company. */
export async function listMembers(companyId: string): Promise<Member[]> {
  const rows = await identityClient().membership.findMany({
    where: { companyId, endedAt: null },
    include: {
      person: {
        include: {
          memberships: { where: { endedAt: null }, select: { companyId: true } },
          sessions: { where: { expiresAt: { gt: now() } }, orderBy: { createdAt: 'desc' } },
        },
      },
    },
    orderBy: [{ person: { name: 'asc' } }, { personId: 'asc' }],
  })
  return rows.map(({ personId, role, person }) => {
    const elsewhere = person.memberships.length > 1
    const here = person.sessions.filter((one) => !elsewhere || one.activeCompanyId === companyId)
    return {
      ...{ personId, name: person.name, email: person.email, role: role as Role, elsewhere },
      sessions: here.map((one) => ({ id: one.id, device: deviceOf(one.userAgent), startedAt: one.createdAt.toISOString() })),
    }
  })
}

async function memberOf(companyId: string, personId: string): Promise<Member> {
  const member = (await listMembers(companyId)).find((one) => one.personId === personId)
  if (!member) throw notFound('person')
  return member
}

/** Gives a member another role. `seen` is the one that the page showed. The last owner stays one: the database says so. */
export async function changeRole(who: Who, personId: string, role: Role, seen: Role): Promise<void> {
  const companyId = who.company.id
  await changingPeople(async (tx) => {
    const { count } = await tx.membership.updateMany({ where: { personId, companyId, endedAt: null, role: seen }, data: { role } })
    if (count === 0) {
      const present = await tx.membership.findFirst({ where: { personId, companyId, endedAt: null }, select: { role: true } })
      if (!present) throw notFound('person')
      throw new AppError('conflict', `Someone else made them ${present.role} meanwhile. Nothing was changed by you; look again and retry.`)
    }
    await writeIdentityEvent('role-changed', { personId, companyId, byPersonId: who.person.id, word: `${seen} to ${role}` }, tx)
  })
}

/** Ends a member's place: the next request is refused, open pages are told at once, and links for them work no longer. The last owner stays. */
export async function endAccess(who: Who, personId: string): Promise<void> {
  const companyId = who.company.id
  await changingPeople(async (tx) => {
    const { count } = await tx.membership.updateMany({ where: { personId, companyId, endedAt: null }, data: { endedAt: now() } })
    if (count === 0) throw notFound('person')
    await endLinks({ purpose: 'password', companyId, personId }, tx)
    await writeIdentityEvent('access-ended', { personId, companyId, byPersonId: who.person.id }, tx)
  })
}

/** Ends one session of a member that is in this company. */
export async function endMemberSession(who: Who, sessionId: string): Promise<void> {
  const owner = (await listMembers(who.company.id)).find((one) => one.sessions.some(({ id }) => id === sessionId))
  if (!owner) throw notFound('session')
  await changingPeople(async (tx) => {
    await tx.session.deleteMany({ where: { id: sessionId, userId: owner.personId } })
    const of = { personId: owner.personId, sessionId, companyId: who.company.id, byPersonId: who.person.id }
    await writeIdentityEvent('session-ended', of, tx)
  })
}

/**
 * A link with which a member sets a new password, for whoever forgot theirs; an earlier one ends. Not for someone who works for another company here too: whoever
 * sets their password would be in there as well.
 */
export async function makePasswordLink(who: Who, personId: string): Promise<{ token: string; expiresAt: Date }> {
  const companyId = who.company.id
  const member = await memberOf(companyId, personId)
  if (member.elsewhere)
    throw new AppError(
      'conflict',
      `${member.name} works for another company here too, so only they can reset their password, by mail. Nothing was changed.`,
    )
  return changingPeople(async (tx) => {
    await endLinks({ purpose: 'password', personId }, tx)
    await writeIdentityEvent('password-link-made', { personId, companyId, byPersonId: who.person.id }, tx)
    return makeLink({ purpose: 'password', companyId, personId, madeBy: who.person.id }, tx)
  })
}
