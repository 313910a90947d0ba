/**
 * What came of handing a message to a server. `later`: it was not taken now, and another try may be; `wholeServer` where that says something of the server and
 * not of this message. `uncertain`: it may have been taken, and nobody knows. `reason` names no address.
 */
export type Posted =
  | { outcome: 'taken' }
  | { outcome: 'later'; reason: string; wholeServer: boolean }
  | { outcome: 'refused'; reason: string }
  | { outcome: 'uncertain'; reason: string }

/** A server that does not answer keeps whoever waits for no longer than this, at each step. */
export const PATIENCE_MS = 10_000
/** Nor longer than this in all. */
export const WHOLE_PATIENCE_MS = 60_000
