import { identityClient } from '@almanac/database/client'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import { changingPeople } from './members.ts'
import { linkGone, type OneTimeLink, spendLink } from './one-time-link.ts'
import { removePasskeys } from './own-passkeys.ts'
import { hashInTurn } from './password-queue.ts'
import { refuseWeakPassword } from './password-rules.ts'

/**
 * Sets a new password by a link, ends every session, and answers the person's email. An owner's link (it names a company) works only while its person is in that
 * company and in no other: it was made under that condition.
 */
export async function setPasswordByLink(link: OneTimeLink, password: string): Promise<string> {
  const personId = link.personId ?? ''
  const person = await identityClient().person.findUnique({
    where: { id: personId },
    include: { memberships: { where: { endedAt: null }, select: { companyId: true } } },
  })
  if (!person) throw linkGone()
  if (link.company && person.memberships.map((one) => one.companyId).join() !== link.company.id) throw linkGone()
  await refuseWeakPassword(password, [person.name, person.email])
  const hash = await hashInTurn(password)
  await changingPeople(async (tx) => {
    await spendLink(tx, link.id, personId)
    await tx.account.updateMany({ where: { userId: personId, providerId: 'credential' }, data: { password: hash } })
    await tx.session.deleteMany({ where: { userId: personId } })
    // Whoever lost the device with their codes too is let in again by an owner; mail alone does not vouch for that.
    if (link.company && person.twoFactorEnabled) {
      await tx.twoFactor.deleteMany({ where: { userId: personId } })
      await tx.person.update({ where: { id: personId }, data: { twoFactorEnabled: false } })
      await writeIdentityEvent('second-factor-off', { personId, companyId: link.company.id }, tx)
    }
    // The lost device may hold a passkey, and so may whoever knew the old password.
    if (link.company) await removePasskeys(tx, { userId: personId }, { personId, companyId: link.company.id })
    await writeIdentityEvent('password-set', { personId, companyId: link.company?.id }, tx)
  })
  return person.email
}
