import { makeLink } from '@almanac/identity/one-time-link'
import { addMembership } from '@almanac/identity/people'
import { newId } from '@almanac/runtime/ids'
import type pg from 'pg'

/** Somebody else of a firm who signs in, a session of theirs that stands, and an invitation; without a password, which takes long to hash. */
export async function makeWaysIn(db: pg.Client, companyId: string) {
  const [otherPersonId, otherSessionId] = [newId(), newId()]
  await db.query(`insert into person (id, name, email, updated_at) values ($1, 'Ruth Ames', $2, now())`, [
    otherPersonId,
    `${otherPersonId}@firm.example`,
  ])
  await addMembership(otherPersonId, companyId, 'technician')
  const session = 'insert into session (id, token, user_id, expires_at, updated_at) values ($1, $4, $2, $3, now())'
  await db.query(session, [otherSessionId, otherPersonId, '2030-01-01', otherSessionId])
  const { id: invitationId } = await makeLink({ purpose: 'invitation', companyId, role: 'technician', name: 'Otis Brand' })
  return { otherPersonId, otherSessionId, invitationId }
}

/** A passkey of somebody, as the sign-in library keeps it; it signs nobody in, having no key. */
export async function makePasskey(db: pg.Client, personId: string): Promise<string> {
  const passkeyId = newId()
  await db.query(
    `insert into passkey (id, public_key, user_id, credential_id, counter, device_type, backed_up) values ($1, 'none', $2, $3, 0, 'singleDevice', false)`,
    [passkeyId, personId, passkeyId],
  )
  return passkeyId
}
