import type { makeArchivedThings } from '../support/archived-things.ts'
import type { Records } from '../support/records.ts'

/** The ids that samples are made of: a firm's records, the firm itself and a session of its person. */
export type SampleIds = Records & { companyId: string; personId: string; sessionId: string; passkeyId: string } & WaysIn & ArchivedThings

/** Somebody else of the firm who signs in, a session of theirs, and an invitation. */
export type WaysIn = { otherPersonId: string; otherSessionId: string; invitationId: string }

/** What was archived, and what may be: tests/support/archived-things. */
export type ArchivedThings = Awaited<ReturnType<typeof makeArchivedThings>>

/** One request to a procedure: who may send it, and an input in which every id field has a value. */
export type Sample = {
  /** o = owner, d = dispatcher, t = technician. */
  roles: 'odt' | 'od' | 'o'
  /** A request that succeeds with a fresh firm's records; commands get their id when sent. */
  input?: (r: SampleIds) => Record<string, unknown>
  /** Other requests, by the path of an id that the first has no place for. */
  also?: Record<string, (r: SampleIds) => Record<string, unknown>>
  /** What the server has to be set up with for it, where that is not the usual. */
  env?: Record<string, string>
  /** Another body for the same command id, where swapping an id would not do. */
  other?: Record<string, unknown>
}

export const version = 1
export const page = { limit: 50 }
export const reading = { value: 18, unit: 'gpg' }
