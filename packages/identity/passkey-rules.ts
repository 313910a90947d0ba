import { identityClient } from '@almanac/database/client'
import { config } from '@almanac/runtime/config'
import { passkey } from '@better-auth/passkey'
import { APIError } from 'better-auth/api'
import { whyNoDemoSignIn } from './demo-sign-in.ts'

const MOST_PASSKEYS = 20

/**
 * The sign-in library's passkeys, for the address that is served. One stands for both steps, since it is something one has, and its device asks for what one knows
 * or is: so a passkey whose device did not ask is neither taken in nor let in.
 */
export function passkeys() {
  const home = new URL(config().PUBLIC_URL)
  return passkey({
    rpID: home.hostname,
    rpName: 'Rebed Almanac',
    origin: home.origin,
    authenticatorSelection: { residentKey: 'required', userVerification: 'required' },
    advanced: { webAuthnChallengeCookie: 'passkey' },
    registration: {
      afterVerification: async ({ verification, user }) => {
        if (!verification.registrationInfo?.userVerified) throw unverified()
        if ((await identityClient().passkey.count({ where: { userId: user.id } })) >= MOST_PASSKEYS)
          throw new APIError('BAD_REQUEST', {
            message: `You have ${MOST_PASSKEYS} passkeys, which is as many as are kept. None was added; remove one first.`,
            code: 'TOO_MANY_PASSKEYS',
          })
      },
    },
    authentication: {
      afterVerification: async ({ verification }) => {
        const { userVerified, credentialID } = verification.authenticationInfo
        if (!userVerified) throw unverified()
        const found = await identityClient().passkey.findUnique({ where: { credentialID }, select: { user: { select: { email: true } } } })
        const why = found && whyNoDemoSignIn(found.user.email)
        if (why) throw new APIError('FORBIDDEN', { message: why, code: 'DEMO_ELSEWHERE' })
      },
    },
  })
}

const unverified = () =>
  new APIError('FORBIDDEN', {
    message:
      'Your device didn’t check who you are. Nothing was changed; use a device with a PIN, a fingerprint or a face, or sign in with your password.',
    code: 'PASSKEY_UNVERIFIED',
  })
