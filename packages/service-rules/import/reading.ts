/** What reading one written value gives: the value, with whatever had to be assumed, or one sentence saying what to type instead. */
export type Reading<T> = { ok: true; value: T; assumptions: string[] } | { ok: false; reason: string }

/** A value that was read, with the assumptions made on the way. */
export function read<T>(value: T, ...assumptions: string[]): Reading<T> {
  return { ok: true, value, assumptions }
}

/** A value that could not be read, with the sentence a person needs to fix it. */
export function unreadable(reason: string): { ok: false; reason: string } {
  return { ok: false, reason }
}
