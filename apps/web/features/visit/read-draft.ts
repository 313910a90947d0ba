import type { BeadCondition } from '@almanac/records/bead-condition'
import { beadAsks } from '@almanac/records/procedure-ask'
import { type Draft, type DraftField, emptyDraft, entered, type StepTexts, UNTOUCHED } from './draft.ts'

const STEP_TEXTS: readonly StepTexts[] = [
  'endCause',
  'evidence',
  'volume',
  'volumeUnit',
  'gravel',
  'gravelUnit',
  'tube',
  'tubeUnit',
  'workDay',
]

/** A field of the first form: an empty text or an unticked box could mean untouched or cleared, and the steps filled it in either way. */
const field = <T extends string | boolean>(kept: T | undefined): DraftField<T> => (kept ? entered(kept) : UNTOUCHED)

/** Beads in the words of the first form. */
const EARLIER_BEADS: Readonly<Record<string, BeadCondition | undefined>> = { soft: 'mushy', iron: 'iron-fouled', short: 'resin-missing' }

/** Answers with their beads in the words of now, so that the same choice stands ticked. */
function worded(answers: Draft['answers']): Draft['answers'] {
  return Object.fromEntries(
    Object.entries(answers).map(([ask, answer]) => [
      ask,
      beadAsks.some((one) => one === ask) ? { ...answer, text: EARLIER_BEADS[answer.text] ?? answer.text } : answer,
    ]),
  )
}

/** The draft in a text that a tablet kept, of this form or of the one before it; an empty one where nothing can be read. */
export function readDraft(text: string | null): Draft {
  if (text === null) return emptyDraft
  let kept: unknown
  try {
    kept = JSON.parse(text)
  } catch {
    return emptyDraft
  }
  if (typeof kept !== 'object' || kept === null) return emptyDraft
  if ('form' in kept && kept.form === emptyDraft.form) return { ...emptyDraft, ...(kept as Partial<Draft>) }
  const first = kept as Omit<Partial<Draft>, StepTexts | 'takenOut'> & Partial<Record<StepTexts, string>> & { takenOut?: boolean }
  const texts = Object.fromEntries(STEP_TEXTS.map((key) => [key, field(first[key])])) as Record<StepTexts, DraftField<string>>
  return { ...emptyDraft, ...first, answers: worded(first.answers ?? {}), ...texts, form: emptyDraft.form, takenOut: field(first.takenOut) }
}
