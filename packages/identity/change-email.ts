import type { Tx } from '@almanac/database/client'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import { AppError } from '@almanac/runtime/errors'
import { checkPassword } from './check-password.ts'
import { changingPeople } from './members.ts'
import { endLinks, linkGone, makeLink, type OneTimeLink, spendLink } from './one-time-link.ts'
import type { Who } from './who.ts'

const taken = () => new AppError('conflict', 'This email already has a sign-in here. Nothing was changed; choose another.')

async function setEmail(tx: Tx, personId: string, email: string, verified: boolean): Promise<void> {
  if (await tx.person.findUnique({ where: { email }, select: { id: true } })) throw taken()
  await tx.person.update({ where: { id: personId }, data: { email, emailVerified: verified } })
  await writeIdentityEvent('email-changed', { personId }, tx)
}

/**
 * Changes the email that somebody signs in with, after their password, which is not guessed at. Where mail is sent, the token of a link to the new address, which
 * does it; otherwise it is done at once, and null.
 */
export async function askNewEmail(
  { person }: Pick<Who, 'person'>,
  { email, password }: { email: string; password: string },
  byMail: boolean,
): Promise<{ token: string } | null> {
  await checkPassword(person.id, password)
  return changingPeople(async (tx) => {
    if (byMail && (await tx.person.findUnique({ where: { email }, select: { id: true } }))) throw taken()
    await endLinks({ purpose: 'email', personId: person.id }, tx)
    if (byMail) return makeLink({ purpose: 'email', personId: person.id, email, madeBy: person.id }, tx)
    await setEmail(tx, person.id, email, false)
    return null
  })
}

/** Takes the new email by the link that went to it; answers the old one, to tell whoever reads there. */
export async function setEmailByLink(link: OneTimeLink): Promise<string> {
  const { personId, email } = link
  if (!personId || !email) throw linkGone()
  return changingPeople(async (tx) => {
    const { email: before } = await tx.person.findUniqueOrThrow({ where: { id: personId }, select: { email: true } })
    await spendLink(tx, link.id, personId)
    await setEmail(tx, personId, email, true)
    return before
  })
}
