import type { CautionKind } from '@almanac/records/caution-kind'
import type { Key } from '@almanac/words/words'
import type { CauseId, DiagnosisSource } from './causes.ts'

export type CheckId =
  | 'beads'
  | 'tap-water'
  | 'bypass'
  | 'salt'
  | 'brine'
  | 'clock'
  | 'pressure'
  | 'change'
  | 'iron'
  | 'outlet'
  | 'draws-brine'
  | 'capacity'
  | 'bead-feel'
  | 'settings'
  | 'signs'

export type CheckAnswer = { readonly value: string; readonly chances: Readonly<Record<CauseId, number>> }

/** Where a check can be made: on the telephone, at the softener, or only with the valve off. */
export type CheckPlace = 'telephone' | 'site' | 'opened'

/** A caution before a check or an advice, by its key among the words. */
export type DiagnosisCaution = { readonly kind: CautionKind; readonly says: Key<'diagnosisCautions'> }

/** A check with its answers, without its words, which stand under its id. `chances`: how often this answer is found where the cause is at work; over all answers they add up to 1. */
export type Check = {
  readonly id: CheckId
  readonly place: CheckPlace
  /** Minutes of work. */
  readonly minutes: number
  /** Days to wait until it answers; left out where it answers at once. */
  readonly days?: number
  /** How often the answer given is the right one. */
  readonly reliability: number
  readonly cautions: readonly DiagnosisCaution[]
  readonly answers: readonly CheckAnswer[]
  readonly source: DiagnosisSource
}
