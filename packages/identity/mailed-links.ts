import { identityClient } from '@almanac/database/client'
import { addRequest } from '@almanac/database/sql/count-request'
import { countTry } from '@almanac/database/sql/count-sign-in'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'
import { endLinks, makeLink } from './one-time-link.ts'
import { accountMark } from './sign-in-limits.ts'

/** What somebody who is not signed in may ask a mail for. */
export type MailedPurpose = 'password' | 'set-up'

/**
 * Makes the link that somebody asked to be mailed; null where nobody is to get one, which the asker is not told. Counted by address, and with growing delays by
 * email, over all processes: nobody's mailbox is filled. A link for a company is made whether or not the email signs in here already.
 */
export async function makeMailedLink(
  purpose: MailedPurpose,
  email: string,
  address: string,
): Promise<{ token: string; name: string } | null> {
  const wait = (sentence: string, seconds: number) => new AppError('rate-limited', sentence, { retryAfterSeconds: seconds })
  if ((await addRequest(`mailed link ${address}`)) > config().SIGN_IN_TRIES_PER_MINUTE)
    throw wait('Too many mails were asked for from here. Nothing was sent; wait a minute, then try again.', 60)
  const seconds = await countTry(`mail ${accountMark(email)}`)
  if (seconds > 0)
    throw wait(`Mails to this address were asked for too often. Nothing was sent; wait ${seconds} s, then try again.`, seconds)
  if (purpose === 'set-up') {
    await endLinks({ purpose, email })
    return { token: (await makeLink({ purpose, email })).token, name: '' }
  }
  const person = await identityClient().person.findUnique({ where: { email }, select: { id: true, name: true } })
  if (!person) return null
  await endLinks({ purpose, personId: person.id })
  await writeIdentityEvent('password-link-made', { personId: person.id })
  return { token: (await makeLink({ purpose, personId: person.id, email })).token, name: person.name }
}
