import type { Answers } from '@almanac/service-rules/close-out/record-from-answers'

export type PartLine = { key: string; stockItemId: string | null; name: string; quantity: string; unit: string }

/** Everything typed on a visit, as the tablet keeps it until the office has it. Texts as typed. */
export type Draft = {
  startedAt: string | null
  /** Step being shown, from 0; the number of steps means the closing form. */
  step: number
  answers: Answers
  outcome: string
  takenOut: boolean
  endCause: string
  evidence: string
  resinKind: string
  volume: string
  volumeUnit: string
  gravel: string
  gravelUnit: string
  tube: string
  tubeUnit: string
  parts: PartLine[] | null
  reason: string
  hardnessReason: string
  notes: string
  /** Id of the closing command, kept so that sending again applies once. */
  commandId: string | null
}

export const emptyDraft: Draft = {
  startedAt: null,
  step: 0,
  answers: {},
  outcome: '',
  takenOut: false,
  endCause: '',
  evidence: '',
  resinKind: '',
  volume: '',
  volumeUnit: '',
  gravel: '',
  gravelUnit: '',
  tube: '',
  tubeUnit: '',
  parts: null,
  reason: '',
  hardnessReason: '',
  notes: '',
  commandId: null,
}
