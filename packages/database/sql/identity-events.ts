import type { IdentityEventKind } from '@almanac/records/identity-event'
import { newId } from '@almanac/runtime/ids'
import { identityClient, type Tx } from '../client.ts'

/** Whose way in it is; where somebody else did it, who; what it is about, such as a role. */
export type IdentityEventOf = { personId: string | null; sessionId?: string; companyId?: string; byPersonId?: string; word?: string }

/**
 * Writes down what happened to someone's way in: who, which session, when, and nothing personal. Failed sign-ins of one account, or of none, within a minute are
 * one row with their number, so that guessing fills no table.
 */
export async function writeIdentityEvent(kind: IdentityEventKind, of: IdentityEventOf, tx: Tx = identityClient()): Promise<void> {
  await tx.$executeRaw`
    insert into identity_event as e (id, kind, person_id, session_id, company_id, by_person_id, word)
    values (${newId()}::uuid, ${kind}, ${of.personId}::uuid, ${of.sessionId ?? null}::uuid, ${of.companyId ?? null}::uuid,
      ${of.byPersonId ?? null}::uuid, ${of.word ?? null})
    on conflict (person_id, minute) where kind = 'sign-in-failed' do update set count = e.count + 1`
}

/** The account behind an email, and whether one of its sessions began at this address and still stands. */
export async function accountAt(email: string, address: string): Promise<{ personId: string | null; knownPlace: boolean }> {
  const [row] = await identityClient().$queryRaw<{ personId: string; knownPlace: boolean }[]>`
    select p.id as "personId",
      exists (select from session s where s.user_id = p.id and s.ip_address = ${address} and s.expires_at > now()) as "knownPlace"
    from person p where p.email = ${email}`
  return row ?? { personId: null, knownPlace: false }
}

/** Removes what is older than a year, the one thing that is ever removed. */
export async function forgetOldIdentityEvents(): Promise<void> {
  await identityClient().$executeRaw`select almanac_forget_identity_events()`
}
