import { oneOf } from './choices.ts'

/** Strong-acid cation gel resin, sodium form: 8% or 10% crosslink, or 8% in fine mesh. */
export const resinKinds = ['gel-8', 'gel-10', 'fine-mesh'] as const
export type ResinKindId = (typeof resinKinds)[number]

/** What a bed's record may say of its resin. */
export const recordedResinKinds = [...resinKinds, 'unknown'] as const
export type RecordedResinKind = (typeof recordedResinKinds)[number]

export const resinKindWords: Readonly<Record<RecordedResinKind, string>> = {
  'gel-8': '8% crosslink',
  'gel-10': '10% crosslink',
  'fine-mesh': 'fine mesh',
  unknown: 'not known',
}

/** A value for each kind of resin. */
export function eachResinKind<Value>(of: (kind: ResinKindId) => Value): Record<ResinKindId, Value> {
  return Object.fromEntries(resinKinds.map((kind) => [kind, of(kind)])) as Record<ResinKindId, Value>
}

/** Where there is little room: "8%". */
export const shortResinKindWords: Readonly<Record<RecordedResinKind, string>> = {
  'gel-8': '8%',
  'gel-10': '10%',
  'fine-mesh': 'fine mesh',
  unknown: 'resin unknown',
}

/** Percent of crosslink, on which a bed's life depends; fine mesh is sold as 8%. Typical data sheets. */
export const crosslinkPercent: Readonly<Record<ResinKindId, number>> = { 'gel-8': 8, 'gel-10': 10, 'fine-mesh': 8 }

/** The resin a record's word stands for; null for "unknown" and any other word. */
export const knownResinKind = (word: string | null | undefined): ResinKindId | null => oneOf(resinKinds, word)

/** Its percent of crosslink; null where the resin is not known. */
export function crosslinkOf(word: string | null | undefined): number | null {
  const kind = knownResinKind(word)
  return kind === null ? null : crosslinkPercent[kind]
}
