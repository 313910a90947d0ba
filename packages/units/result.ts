/**
 * What a calculation answers when its inputs may be bad. A value always travels with what was assumed to reach it, which
 * inputs would have made it firmer, and where its constants come from; a refusal carries one sentence a person can act on.
 */
export type Ok<T> = { ok: true; value: T; assumptions: string[]; missing: string[]; sources: string[] }
export type Refusal = { ok: false; reason: string }
export type Result<T> = Ok<T> | Refusal

export type Notes = { assumptions?: string[]; missing?: string[]; sources?: string[] }

/** A value that could be worked out, with its notes; repeated notes are kept once. */
export function ok<T>(value: T, notes: Notes = {}): Ok<T> {
  return {
    ok: true,
    value,
    assumptions: once(notes.assumptions),
    missing: once(notes.missing),
    sources: once(notes.sources),
  }
}

/** A calculation that cannot be made; `reason` is one plain sentence: what is wrong and what to do. */
export function refuse(reason: string): Refusal {
  return { ok: false, reason }
}

function once(notes: string[] | undefined): string[] {
  return notes === undefined || notes.length === 0 ? [] : [...new Set(notes)]
}
