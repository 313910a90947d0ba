import type { Answers } from '@almanac/service-rules/close-out/record-from-answers'

export type PartLine = { key: string; stockItemId: string | null; name: string; quantity: string; unit: string; why?: string }

/**
 * A field that the steps may fill in. Untouched shows what the steps say; set and cleared are what the technician did, and stand whatever the
 * steps say: an emptied text stays empty and an unticked box unticked.
 */
export type DraftField<T extends string | boolean> = { state: 'untouched' } | { state: 'set'; value: T } | { state: 'cleared' }

export const UNTOUCHED = { state: 'untouched' } as const

/** What a field becomes when somebody types, chooses or ticks; the empty value clears it. */
export function entered<T extends string | boolean>(value: T): DraftField<T> {
  return value === '' || value === false ? { state: 'cleared' } : { state: 'set', value }
}

/** What a field shows. `byDefault` stands while it is untouched. */
export function shownText(field: DraftField<string>, byDefault: string): string {
  if (field.state === 'untouched') return byDefault
  return field.state === 'set' ? field.value : ''
}

/** As `shownText`, of a box to tick. */
export function shownTick(field: DraftField<boolean>, byDefault: boolean): boolean {
  if (field.state === 'untouched') return byDefault
  return field.state === 'set'
}

/** Fields of the closing form that the steps fill in. */
export type StepTexts =
  | 'endCause'
  | 'evidence'
  | 'volume'
  | 'volumeUnit'
  | 'volumeWhy'
  | 'gravel'
  | 'gravelUnit'
  | 'gravelWhy'
  | 'tube'
  | 'tubeUnit'
  | 'tubeWhy'
  | 'workDay'
  | 'beganClock'
  | 'endedClock'

/** Everything typed on a visit, as the tablet keeps it until the office has it. Texts as typed. */
export type Draft = Record<StepTexts, DraftField<string>> & {
  /** Version of this form; drafts kept by an earlier one are read by `readDraft`. */
  form: 2
  /** The job it was begun for; null on drafts of before: a job booked again has another visit. */
  jobId: string | null
  /** The visit it was last worked on in; the job may have been booked again since. */
  visitId: string | null
  startedAt: string | null
  /** Whether the visit was started on this device: one that was begun elsewhere is not this one's to take back. */
  startedHere: boolean
  /** When the steps were left for the closing form; null on drafts that never came there. */
  finishedAt: string | null
  /** Step being shown, from 0; the number of steps means the closing form. */
  step: number
  answers: Answers
  /** Steps that were gone on from by their own button; skipped ones are not among them. */
  passed: readonly string[]
  /** A time to wait that runs. */
  timer: { stepId: string; startedAt: string } | null
  outcome: string
  takenOut: DraftField<boolean>
  resinKind: string
  /** Null while untouched: the kit stands there as a first guess. */
  parts: PartLine[] | null
  reason: string
  hardnessReason: string
  notes: string
  others: string
  followUpKind: string
  followUpWhat: string
  extraWork: string
  extraWith: string
}

export const emptyDraft: Draft = {
  form: 2,
  jobId: null,
  visitId: null,
  startedAt: null,
  startedHere: false,
  finishedAt: null,
  step: 0,
  answers: {},
  passed: [],
  timer: null,
  outcome: '',
  takenOut: UNTOUCHED,
  endCause: UNTOUCHED,
  evidence: UNTOUCHED,
  resinKind: '',
  volume: UNTOUCHED,
  volumeUnit: UNTOUCHED,
  volumeWhy: UNTOUCHED,
  gravel: UNTOUCHED,
  gravelUnit: UNTOUCHED,
  gravelWhy: UNTOUCHED,
  tube: UNTOUCHED,
  tubeUnit: UNTOUCHED,
  tubeWhy: UNTOUCHED,
  workDay: UNTOUCHED,
  beganClock: UNTOUCHED,
  endedClock: UNTOUCHED,
  parts: null,
  reason: '',
  hardnessReason: '',
  notes: '',
  others: '',
  followUpKind: '',
  followUpWhat: '',
  extraWork: '',
  extraWith: '',
}

/** A closing form with its fields as they are shown: what was typed, and what the steps say of the rest. */
export type ShownDraft = Omit<Draft, StepTexts | 'takenOut'> & Record<StepTexts, string> & { takenOut: boolean }
