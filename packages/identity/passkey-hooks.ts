import { identityClient } from '@almanac/database/client'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { type AuthContext, noteSignIn } from './note-sign-in.ts'

/** A device's answer and nothing else: no name, and no session beside the one that stands. */
export function onlyTheAnswer(ctx: AuthContext): void {
  const { response: _answer, ...more } = (ctx.body ?? {}) as { response?: unknown }
  if (Object.keys(more).length > 0) throw new AppError('invalid', 'A device’s answer is sent alone. Nothing was changed; try again.')
}

/** What followed from a device's answer: a passkey more, known by what it was added on; or a sign-in, or none. */
export async function afterPasskey(ctx: AuthContext, failed: boolean): Promise<void> {
  if (ctx.path === '/passkey/verify-registration') {
    if (failed) return
    const { id, userId: personId } = ctx.context.returned as { id: string; userId: string }
    await identityClient().passkey.update({ where: { id }, data: { userAgent: ctx.headers?.get('user-agent') ?? null } })
    return writeIdentityEvent('passkey-added', { personId })
  }
  const { id } = ((ctx.body ?? {}) as { response?: { id?: unknown } }).response ?? {}
  const known = typeof id === 'string' ? await identityClient().passkey.findUnique({ where: { credentialID: id } }) : null
  const signedIn = ctx.context.newSession
  if (failed || !signedIn) return writeIdentityEvent('sign-in-failed', { personId: known?.userId ?? null })
  if (known) await identityClient().passkey.update({ where: { id: known.id }, data: { lastUsedAt: now() } })
  await noteSignIn(ctx, signedIn)
}
