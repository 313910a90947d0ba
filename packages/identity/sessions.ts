import { identityClient } from '@almanac/database/client'
import { writeIdentityEvent } from '@almanac/database/sql/identity-events'
import { now } from '@almanac/runtime/clock'
import { notFound } from '@almanac/runtime/errors'
import { type Device, deviceOf } from './device.ts'
import type { Who } from './who.ts'

export type OpenSession = { id: string; startedAt: string; device: Device; present: boolean }

/** The person's sessions that stand, newest first. */
export async function listSessions(who: Who): Promise<OpenSession[]> {
  const rows = await identityClient().session.findMany({
    where: { userId: who.person.id, expiresAt: { gt: now() } },
    orderBy: { createdAt: 'desc' },
  })
  return rows.map((row) => ({
    id: row.id,
    startedAt: row.createdAt.toISOString(),
    device: deviceOf(row.userAgent),
    present: row.id === who.sessionId,
  }))
}

/** Ends one of the person's own sessions; its next request is refused and its live stream closes. */
export async function endSession(who: Who, sessionId: string): Promise<void> {
  const { count } = await identityClient().session.deleteMany({ where: { id: sessionId, userId: who.person.id } })
  if (count === 0) throw notFound('session')
  await writeIdentityEvent('session-ended', { personId: who.person.id, sessionId })
}
