import { identityClient } from '@almanac/database/client'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { changingPeople } from './members.ts'
import { endLinks } from './one-time-link.ts'
import type { Who } from './who.ts'

/** How somebody who is to be erased is named where they sign in; null for who is and was no member. Refuses whoever asks, so that an owner stays. */
export async function beforeForgetting(who: Who, personId: string): Promise<{ name: string; email: string } | null> {
  const companyId = who.company.id
  if (personId === who.person.id) throw new AppError('conflict', 'You can’t erase yourself. Nothing was erased; ask another owner.')
  const member = await identityClient().membership.findUnique({
    where: { personId_companyId: { personId, companyId } },
    select: { person: { select: { name: true, email: true } } },
  })
  return member?.person ?? null
}

/**
 * Takes somebody who is being erased out of a company. Who works for no other company here loses name, address, password, second step, passkeys and every session; what they did
 * stays under an id that names nobody. Who does keeps their sign-in there: it is not this company's. Doing it twice does nothing more. The last owner stays.
 */
export async function forgetPerson(who: Who, personId: string): Promise<void> {
  const companyId = who.company.id
  await changingPeople(async (tx) => {
    const known = await tx.membership.findUnique({ where: { personId_companyId: { personId, companyId } } })
    if (!known) return
    if (known.endedAt === null) {
      await tx.membership.update({ where: { id: known.id }, data: { endedAt: now() } })
      await writeIdentityEvent('access-ended', { personId, companyId, byPersonId: who.person.id }, tx)
    }
    await endLinks({ purpose: 'password', companyId, personId }, tx)
    await tx.oneTimeLink.updateMany({ where: { companyId, personId }, data: { name: null, email: null } })
    if ((await tx.membership.count({ where: { personId, endedAt: null } })) > 0) return
    const { email } = await tx.person.findUniqueOrThrow({ where: { id: personId }, select: { email: true } })
    await tx.oneTimeLink.updateMany({ where: { OR: [{ personId }, { email }] }, data: { name: null, email: null, endedAt: now() } })
    await tx.verification.deleteMany({ where: { OR: [{ identifier: { contains: email } }, { value: { contains: personId } }] } })
    await tx.session.deleteMany({ where: { userId: personId } })
    await tx.account.deleteMany({ where: { userId: personId } })
    await tx.twoFactor.deleteMany({ where: { userId: personId } })
    await tx.passkey.deleteMany({ where: { userId: personId } })
    await tx.person.update({
      where: { id: personId },
      data: { name: 'Erased person', email: `${personId}@erased.invalid`, emailVerified: false, image: null, twoFactorEnabled: false },
    })
  })
}
