import { createHash, randomBytes } from 'node:crypto'
import { identityClient, type Tx } from '@almanac/database/client'
import { addRequest, takeBackRequest } from '@almanac/database/sql/count-request'
import type { LinkPurpose } from '@almanac/records/one-time-link'
import type { Role } from '@almanac/records/role'
import { now } from '@almanac/runtime/clock'
import { config } from '@almanac/runtime/config'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

const TOKEN_BYTES = 32
const HOUR_MS = 3_600_000
/** How long a link of each kind is good, in hours. */
const HOURS: Record<LinkPurpose, number> = { 'set-up': 72, invitation: 7 * 24, password: 24, email: 24 }

/** What is known of a link that still works. */
export type OneTimeLink = {
  id: string
  purpose: LinkPurpose
  tokenHash: string
  expiresAt: Date
  company: { id: string; name: string } | null
  role: Role | null
  colleagueId: string | null
  personId: string | null
  name: string | null
  email: string | null
}

export const linkGone = () =>
  new AppError(
    'not-found',
    'This link no longer works: it was used, ended or is too old. Nothing was changed; ask whoever gave it to you for a new one.',
  )

/** A token is 256 random bits, so that a plain hash keeps it: nobody tries that many. */
const hashOf = (token: string) => createHash('sha256').update(token).digest('hex')

type NewLink = {
  purpose: LinkPurpose
  companyId?: string
  role?: Role
  colleagueId?: string | null
  personId?: string
  name?: string | null
  email?: string | null
  madeBy?: string
}

/** Makes a link and answers its token, which is kept nowhere: whoever loses it needs a new one. */
export async function makeLink(link: NewLink, tx: Tx = identityClient()): Promise<{ id: string; token: string; expiresAt: Date }> {
  const token = randomBytes(TOKEN_BYTES).toString('base64url')
  const id = newId()
  const expiresAt = new Date(now().getTime() + HOURS[link.purpose] * HOUR_MS)
  await tx.oneTimeLink.create({ data: { ...link, id, tokenHash: hashOf(token), expiresAt } })
  return { id, token, expiresAt }
}

const alive = () => ({ usedAt: null, endedAt: null, expiresAt: { gt: now() } })

/**
 * The link of a token, while it works. Whoever tries tokens that are none is held up by address, over all processes: each try is counted before it is looked
 * up, and a right one is restored.
 */
export async function readLink(purpose: LinkPurpose, token: string, address: string): Promise<OneTimeLink> {
  const key = `one-time link ${address}`
  if ((await addRequest(key)) > config().SIGN_IN_TRIES_PER_MINUTE)
    throw new AppError(
      'rate-limited',
      'Too many links that do not work came from here. Nothing was changed; wait a minute, then try again.',
      {
        retryAfterSeconds: 60,
      },
    )
  if (!/^[\w-]{43}$/.test(token)) throw linkGone()
  const row = await identityClient().oneTimeLink.findFirst({
    where: { tokenHash: hashOf(token), purpose, ...alive() },
    include: { company: { select: { id: true, name: true } } },
  })
  if (!row) throw linkGone()
  await takeBackRequest(key)
  const { id, tokenHash, expiresAt, company, colleagueId, personId, name, email } = row
  return { id, purpose, tokenHash, expiresAt, company, role: row.role as Role | null, colleagueId, personId, name, email }
}

/** Uses a link up, inside the transaction that does what it is for; of two at one moment, one is refused. */
export async function spendLink(tx: Tx, linkId: string, personId: string): Promise<void> {
  const { count } = await tx.oneTimeLink.updateMany({ where: { id: linkId, ...alive() }, data: { usedAt: now(), personId } })
  if (count === 0) throw linkGone()
}

/** Ends links that were not used; answers how many. */
export async function endLinks(
  which: { id?: string; purpose: LinkPurpose; companyId?: string; personId?: string; email?: string | null },
  tx: Tx = identityClient(),
): Promise<number> {
  const { count } = await tx.oneTimeLink.updateMany({ where: { ...which, usedAt: null, endedAt: null }, data: { endedAt: now() } })
  return count
}
