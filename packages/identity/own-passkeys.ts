import { identityClient, type Tx } from '@almanac/database/client'
import { type IdentityEventOf, writeIdentityEvent } from '@almanac/database/sql/identity-events'
import { notFound } from '@almanac/runtime/errors'
import { getAuthenticatorName } from '@better-auth/passkey'
import { type Device, deviceOf } from './device.ts'
import type { Who } from './who.ts'

/** A passkey as its owner knows it again: what it was added on, and which program keeps it, where that is known. */
export type OwnPasskey = { id: string; device: Device; keptBy: string | null; addedAt: string; lastUsedAt: string | null }

/** The person's passkeys, newest first. */
export async function listPasskeys(who: Who): Promise<OwnPasskey[]> {
  const rows = await identityClient().passkey.findMany({ where: { userId: who.person.id }, orderBy: { createdAt: 'desc' } })
  return rows.map((row) => ({
    id: row.id,
    device: deviceOf(row.userAgent),
    keptBy: getAuthenticatorName(row.aaguid) ?? null,
    addedAt: row.createdAt.toISOString(),
    lastUsedAt: row.lastUsedAt?.toISOString() ?? null,
  }))
}

/** Removes passkeys, each written down; answers how many. */
export async function removePasskeys(tx: Tx, which: { userId: string; id?: string }, of: IdentityEventOf): Promise<number> {
  const { count } = await tx.passkey.deleteMany({ where: which })
  for (let one = 0; one < count; one++) await writeIdentityEvent('passkey-removed', of, tx)
  return count
}

/** Removes one of the person's own passkeys: it signs nobody in any more. */
export async function removePasskey(who: Who, passkeyId: string): Promise<void> {
  const { id: userId } = who.person
  await identityClient().$transaction(async (tx) => {
    if ((await removePasskeys(tx, { userId, id: passkeyId }, { personId: userId, sessionId: who.sessionId })) === 0)
      throw notFound('passkey')
  })
}
