import { createHmac, timingSafeEqual } from 'node:crypto'
import { config } from '@almanac/runtime/config'

/** What a link is good for; a token made for one purpose opens nothing else. */
export type PublicPurpose = 'arrival-windows' | 'calendar' | 'measure' | 'message' | 'reminder'

/** The record a public link stands for. */
export type PublicRecord = { companyId: string; id: string }

const ID_BYTES = 16
const SIGN_BYTES = 20

const bytesOf = (uuid: string) => Buffer.from(uuid.replaceAll('-', ''), 'hex')
const uuidOf = (bytes: Buffer) => bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5')

function signature(purpose: PublicPurpose, ids: Buffer): Buffer {
  return createHmac('sha256', config().AUTH_SECRET).update(`public link: ${purpose}`).update(ids).digest().subarray(0, SIGN_BYTES)
}

/**
 * The token of a link that works without signing in: it carries its company and record, signed with the app's secret (HMAC-SHA256, 160 bits), so that
 * nothing secret lies in the database or in a backup. The link ends when its record does, or all links when the secret changes.
 */
export function makePublicToken(purpose: PublicPurpose, { companyId, id }: PublicRecord): string {
  const ids = Buffer.concat([bytesOf(companyId), bytesOf(id)])
  return Buffer.concat([ids, signature(purpose, ids)]).toString('base64url')
}

/** The record a token stands for; null for one that was not made here for this purpose. */
export function readPublicToken(purpose: PublicPurpose, token: string): PublicRecord | null {
  if (!/^[\w-]{1,100}$/.test(token)) return null
  const bytes = Buffer.from(token, 'base64url')
  if (bytes.length !== 2 * ID_BYTES + SIGN_BYTES) return null
  const ids = bytes.subarray(0, 2 * ID_BYTES)
  if (!timingSafeEqual(bytes.subarray(2 * ID_BYTES), signature(purpose, ids))) return null
  return { companyId: uuidOf(ids.subarray(0, ID_BYTES)), id: uuidOf(ids.subarray(ID_BYTES)) }
}
