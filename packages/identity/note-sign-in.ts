import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import { config } from '@almanac/runtime/config'
import { newId } from '@almanac/runtime/ids'
import type { createAuthMiddleware } from 'better-auth/api'
import { accountMark } from './sign-in-limits.ts'

/** What the sign-in library hands a hook. */
export type AuthContext = Parameters<Parameters<typeof createAuthMiddleware>[0]>[0]

const DEVICE_DAYS = 400

/** A cookie of the device for one account: it signs nobody in, it only says that this account was signed in here before. */
export const deviceCookie = (mark: string) =>
  `${config().PUBLIC_URL.startsWith('https://') ? '__Secure-' : ''}almanac.device-${mark.slice(0, 16)}`

/** Writes down that somebody is in, and marks the device as one of theirs. */
export async function noteSignIn(ctx: AuthContext, signedIn: NonNullable<AuthContext['context']['newSession']>): Promise<void> {
  await writeIdentityEvent('signed-in', { personId: signedIn.user.id, sessionId: signedIn.session.id })
  const mark = accountMark(signedIn.user.email)
  await ctx.setSignedCookie(deviceCookie(mark), `${mark}.${newId()}`, ctx.context.secret, {
    path: '/api/auth',
    httpOnly: true,
    sameSite: 'lax',
    secure: config().PUBLIC_URL.startsWith('https://'),
    maxAge: DEVICE_DAYS * 86_400,
  })
}
