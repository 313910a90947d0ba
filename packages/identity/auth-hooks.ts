import { identityClient } from '@almanac/database/client'
import { forgetTries } from '@almanac/database/sql/count-sign-in'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import { AppError } from '@almanac/runtime/errors'
import { APIError, createAuthMiddleware, getSessionFromCtx } from 'better-auth/api'
import { clientAddress } from './client-address.ts'
import { whyNoDemoSignIn } from './demo-sign-in.ts'
import { type AuthContext as Context, deviceCookie, noteSignIn } from './note-sign-in.ts'
import { afterPasskey, onlyTheAnswer } from './passkey-hooks.ts'
import { refuseWeakPassword } from './password-rules.ts'
import { accountMark, countPasswordChange, countSignIn, type Try } from './sign-in-limits.ts'

/** The paths of the sign-in library that are served; the others stay shut. */
export const AUTH_PATHS: readonly string[] = [
  ...['/sign-in/email', '/sign-out', '/get-session', '/change-password', '/update-user'],
  ...['/passkey/verify-registration', '/passkey/generate-authenticate-options', '/passkey/verify-authentication'],
  ...['/two-factor/enable', '/two-factor/disable', '/two-factor/verify-totp', '/two-factor/verify-backup-code'],
]

const LONGEST_NAME = 80
const LONGEST_EMAIL = 320

/** What the first hook found out, for the last hook of the same request. */
const tries = new WeakMap<Headers, Try>()
const changes = new WeakMap<Headers, { key: string; personId: string; companyId?: string | null }>()
/** Who was signed in already when a code came. */
const already = new WeakMap<Headers, string>()

/** Refusals of ours in the shape of the library's. */
async function asLibrary<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    if (!(error instanceof AppError)) throw error
    const seconds = error.detail.retryAfterSeconds
    const headers: HeadersInit = typeof seconds === 'number' ? { 'retry-after': String(seconds) } : {}
    const status = error.code === 'rate-limited' ? 'TOO_MANY_REQUESTS' : error.code === 'invalid' ? 'BAD_REQUEST' : 'SERVICE_UNAVAILABLE'
    throw new APIError(status, { message: error.message, code: error.code }, headers)
  }
}

async function beforeSignIn(ctx: Context, headers: Headers): Promise<void> {
  const { email } = (ctx.body ?? {}) as { email?: unknown }
  // Anything else the library refuses by itself, before it looks for an account.
  if (typeof email !== 'string' || email.length > LONGEST_EMAIL || !/^[\x21-\x7e]+@[\x21-\x7e]+$/.test(email)) return
  const mark = accountMark(email)
  const cookie = await ctx.getSignedCookie(deviceCookie(mark), ctx.context.secret)
  const device = typeof cookie === 'string' && cookie.startsWith(`${mark}.`) ? cookie : null
  tries.set(headers, await countSignIn({ email, address: clientAddress(headers), device }))
}

async function afterSignIn(ctx: Context, headers: Headers): Promise<void> {
  const tried = tries.get(headers)
  if (!tried) return
  const signedIn = ctx.context.newSession
  // The password alone signs nobody in who has a second step: the library has taken that session away again, or will.
  const half = (ctx.context.returned as { twoFactorRedirect?: boolean } | undefined)?.twoFactorRedirect === true
  if (!signedIn && !half) return writeIdentityEvent('sign-in-failed', { personId: tried.personId })
  await forgetTries(tried.key)
  if (!signedIn || half || (signedIn.user as { twoFactorEnabled?: boolean }).twoFactorEnabled) return
  await noteSignIn(ctx, signedIn)
}

/** A new password is no common one, the old one is not guessed at, and every other session ends. */
async function beforePasswordChange(ctx: Context, headers: Headers) {
  const session = await getSessionFromCtx(ctx)
  const body = (ctx.body ?? {}) as { newPassword?: unknown }
  if (!session || typeof body.newPassword !== 'string') return
  await refuseWeakPassword(body.newPassword, [session.user.name, session.user.email])
  const { activeCompanyId } = session.session as { activeCompanyId?: string | null }
  changes.set(headers, { key: await countPasswordChange(session.user.id), personId: session.user.id, companyId: activeCompanyId })
  return { context: { body: { ...body, revokeOtherSessions: true } } }
}

/** The present password is not guessed at by turning the second step on or off. */
async function beforeSecondFactorChange(ctx: Context, headers: Headers): Promise<void> {
  const session = await getSessionFromCtx(ctx)
  if (session) changes.set(headers, { key: await countPasswordChange(session.user.id), personId: session.user.id })
}

/** A code and nothing else: no device is let in without one afterwards. */
async function beforeSecondStep(ctx: Context, headers: Headers) {
  const session = await getSessionFromCtx(ctx)
  if (session) already.set(headers, session.user.id)
  const { code, ...more } = (ctx.body ?? {}) as { code?: unknown }
  if (Object.keys(more).length > 0) throw new AppError('invalid', 'A code is sent alone. Nothing was changed; enter it again.')
  return { context: { body: { code: typeof code === 'string' ? code.replaceAll(/\s/g, '').slice(0, 40) : '' } } }
}

/** What followed from a code: a sign-in; or, of whoever was signed in, the second step is on from now. */
async function afterSecondStep(ctx: Context, headers: Headers): Promise<void> {
  const personId = already.get(headers)
  if (personId) return writeIdentityEvent('second-factor-on', { personId })
  if (ctx.context.newSession) await noteSignIn(ctx, ctx.context.newSession)
}

/** A name is one short line, and the only thing people change of themselves. */
function beforeNameChange(ctx: Context) {
  const { name, ...more } = (ctx.body ?? {}) as { name?: unknown }
  const plain = typeof name === 'string' ? name.trim() : ''
  if (Object.keys(more).length > 0 || !plain || plain.length > LONGEST_NAME || !plain.isWellFormed() || /[\p{Cc}<>]/u.test(plain))
    throw new AppError('invalid', `A name is one line of 1 to ${LONGEST_NAME} characters. The old one was kept; enter it again.`)
  return { context: { body: { name: plain } } }
}

async function beforeSignOut(ctx: Context) {
  const session = await getSessionFromCtx(ctx)
  if (session) await writeIdentityEvent('signed-out', { personId: session.user.id, sessionId: session.session.id })
}

/** Before the library's own work. A call that comes over no HTTP is one of our own, as in set-up, and is let through. */
export const beforeAuth = createAuthMiddleware((ctx) =>
  asLibrary(async () => {
    const { headers } = ctx
    const why = ctx.path === '/sign-in/email' ? whyNoDemoSignIn(String(ctx.body?.email ?? '')) : undefined
    if (why) throw new APIError('FORBIDDEN', { message: why, code: 'DEMO_ELSEWHERE' })
    if (!ctx.request || !headers) return undefined
    if (ctx.path === '/sign-in/email') return void (await beforeSignIn(ctx, headers))
    if (ctx.path === '/change-password') return beforePasswordChange(ctx, headers)
    if (ctx.path === '/update-user') return beforeNameChange(ctx)
    if (ctx.path === '/two-factor/enable' || ctx.path === '/two-factor/disable') return void (await beforeSecondFactorChange(ctx, headers))
    if (ctx.path.startsWith('/two-factor/verify-')) return beforeSecondStep(ctx, headers)
    if (ctx.path.startsWith('/passkey/verify-')) return onlyTheAnswer(ctx)
    if (ctx.path === '/sign-out') return void (await beforeSignOut(ctx))
    return undefined
  }),
)

/** After it: what happened is written down, and the right password forgets the wrong ones. */
export const afterAuth = createAuthMiddleware(async (ctx) => {
  const { headers } = ctx
  if (!ctx.request || !headers) return
  const failed = ctx.context.returned instanceof Error
  if (ctx.path.startsWith('/two-factor/verify-') && !failed) await afterSecondStep(ctx, headers)
  if (ctx.path.startsWith('/passkey/verify-')) await afterPasskey(ctx, failed)
  if (ctx.path === '/sign-in/email') await afterSignIn(ctx, headers)
  const change = changes.get(headers)
  if (change && !failed) {
    await forgetTries(change.key)
    const begun = ctx.context.newSession?.session.id
    if (begun && change.companyId)
      await identityClient().session.update({ where: { id: begun }, data: { activeCompanyId: change.companyId } })
    if (ctx.path === '/change-password') await writeIdentityEvent('password-changed', { personId: change.personId })
    if (ctx.path === '/two-factor/disable') await writeIdentityEvent('second-factor-off', { personId: change.personId })
  }
  if (ctx.path === '/update-user' && !failed) {
    const session = await getSessionFromCtx(ctx)
    if (session) await writeIdentityEvent('name-changed', { personId: session.user.id, sessionId: session.session.id })
  }
})
