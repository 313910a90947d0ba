import { createHmac } from 'node:crypto'
import { addRequest } from '@almanac/database/sql/count-request'
import { countTry } from '@almanac/database/sql/count-sign-in'
import { accountAt } from '@almanac/database/sql/identity-events'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'

/** Tries of all who are not known, together, for each that one address has: beyond it only known devices and places get in. */
const ALL_FOR_ONE = 30

const hashed = (text: string) => createHmac('sha256', config().AUTH_SECRET).update(`sign-in: ${text}`).digest('base64url')

const wait = (sentence: string, seconds: number) => new AppError('rate-limited', sentence, { retryAfterSeconds: seconds })

/** A try that may be made: at which key it was counted, and whose account it is, if anyone's. */
export type Try = { key: string; personId: string | null; known: boolean }

/**
 * Lets a try of a password through, or says how long to wait. Strangers are held up by account, with growing delays, by address, and all together. A device
 * that signed this account in before, or an address where it is signed in, has a count of its own, so that strangers' guesses never lock its owner out.
 */
export async function countSignIn(given: { email: string; address: string; device: string | null }): Promise<Try> {
  const email = given.email.toLowerCase()
  const { personId, knownPlace } = await accountAt(email, given.address)
  const known = given.device !== null || knownPlace
  const key = hashed(given.device ? `device ${given.device} ${email}` : knownPlace ? `place ${given.address} ${email}` : `account ${email}`)
  if (!known) {
    const each = config().SIGN_IN_TRIES_PER_MINUTE
    if ((await addRequest(`sign-in ${given.address}`)) > each)
      throw wait('Too many tries from here. Nothing was changed; wait a minute, then try again.', 60)
    if ((await addRequest('sign-in of all')) > each * ALL_FOR_ONE)
      throw wait(
        'Too many people are trying to sign in. Nothing was changed; wait a minute, or use a device where you signed in before.',
        60,
      )
  }
  const seconds = await countTry(key)
  if (seconds > 0)
    throw wait(
      `Too many wrong passwords for this account. Nothing was changed; wait ${seconds < 60 ? `${seconds} s` : `${Math.ceil(seconds / 60)} min`}, or use a device where you signed in before.`,
      seconds,
    )
  return { key, personId, known }
}

/** Counts a try of the present password by whoever is signed in already, who may not be its owner. */
export async function countPasswordChange(personId: string): Promise<string> {
  const key = hashed(`change ${personId}`)
  const seconds = await countTry(key)
  if (seconds > 0) throw wait(`Too many wrong passwords. The old one still works; wait ${seconds} s, then try again.`, seconds)
  return key
}

/** Names the account in a device's cookie, without saying whose it is. */
export const accountMark = (email: string) => hashed(`mark ${email.toLowerCase()}`)
