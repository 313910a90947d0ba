import type { MeasurementKind } from '@almanac/records/measurement-kind'
import type { ShutOff, VisitAskId } from '@almanac/records/procedure-ask'
import { readNumber } from '@almanac/units/read-number'
import type { CheckStepId } from './check-steps.ts'
import type { Measurement, StepCheck } from './close-out-form.ts'
import { MEASURED_AS } from './likely-amounts.ts'
import type { AnswerTexts } from './safe-ending.ts'

/** What the tablet holds for one question of the procedure: text as typed or chosen, its unit, the value in the question's own unit, and when. */
export interface Answer {
  text: string
  unit: string | null
  /** In the unit the question is stored in; null where the text is no number. */
  value: number | null
  /** The number as typed, in `unit`; the answers of tablets that kept none are read again. */
  entered?: number | null
  /** Why it is right although it is unusual. */
  why?: string
  at: string
}

export type Answers = Readonly<Partial<Record<VisitAskId, Answer>>>

/** The answers that there are, with what they answer. */
const given = (answers: Answers) => Object.entries(answers) as [VisitAskId, Answer][]

/** Questions that are measurements, by their id in the procedure. */
const MEASURED: Readonly<Partial<Record<VisitAskId, MeasurementKind>>> = {
  'hardness-outlet-after-gpg': 'outletHardnessGpg',
  'hardness-outlet-gpg': 'outletHardnessGpg',
  'hardness-raw-gpg': 'rawHardnessGpg',
  'iron-mg-l': 'rawIronMgL',
  'chlorine-total-mg-l': 'inletTotalChlorineMgL',
  'pressure-psi': 'pressurePsi',
}

/** Answers that prove a shut-off; one that cannot be shut off ends the work. */
const PROVEN: readonly ShutOff[] = ['holds', 'leaks']

/** Each question's answer as stored, of a record's checks: what stops a visit is read from the record itself, on the tablet and at the office alike. */
export function textsOfChecks(checks: readonly StepCheck[]): AnswerTexts {
  return Object.fromEntries(checks.map(({ stepId, confirmed, note }) => [stepId, confirmed ? 'yes' : (note ?? '')]))
}

/** Confirmations without which a close-out is not complete, by the question that gives them and the answer that counts. */
const CONFIRMED: readonly { ask: VisitAskId; check: CheckStepId; when: (answer: Answer) => boolean }[] = [
  { ask: 'bypass-holds', check: 'bypass-proven', when: ({ text }) => PROVEN.some((one) => one === text) },
  { ask: 'pressure-zero', check: 'pressure-zero', when: isYes },
  { ask: 'cap-out', check: 'cap-out-counted', when: isYes },
  { ask: 'hardness-outlet-after-gpg', check: 'outlet-tested', when: (answer) => answer.value !== null },
  { ask: 'no-leaks', check: 'leaks-checked', when: isYes },
  { ask: 'in-service', check: 'bypass-returned', when: isYes },
  { ask: 'left-as', check: 'bypass-returned', when: ({ text }) => text === 'in-service' },
  { ask: 'left-as', check: 'leaks-checked', when: ({ text }) => text === 'in-service' },
  { ask: 'left-in-bypass', check: 'left-in-bypass', when: isYes },
  { ask: 'customer-told', check: 'customer-told', when: isYes },
]

/** In the short procedures one answer stands for two checks: "in service, no leaks", and "bypass holds, no pressure". */
const SHORT_PROCEDURE: readonly { ask: VisitAskId; check: CheckStepId }[] = [
  { ask: 'in-service', check: 'leaks-checked' },
  { ask: 'pressure-zero', check: 'bypass-proven' },
]

function isYes(answer: Answer): boolean {
  return answer.text === 'yes'
}

/** Measurements that the answers hold; a number that could not be read is left out, since the form has said so already. */
export function measurementsFrom(answers: Answers): Measurement[] {
  return given(answers).flatMap(([id, answer]) => {
    const kind = MEASURED[id]
    if (!kind || answer.value === null || answer.text.trim() === '') return []
    const entered = answer.entered ?? readNumber(answer.text)
    // What was typed and cannot be told any more is not made up: the value then stands in the unit it is kept in.
    const typed =
      entered === null
        ? { enteredValue: answer.value, enteredUnit: MEASURED_AS[kind].unit }
        : { enteredValue: entered, enteredUnit: answer.unit ?? '' }
    return [{ kind, value: answer.value, ...typed, ...(answer.why ? { why: answer.why } : {}) }]
  })
}

/** The steps as ticked: each question's answer as a note, and the checks that a close-out cannot do without. */
export function checksFrom(answers: Answers, shortProcedure: boolean): StepCheck[] {
  const noted: StepCheck[] = given(answers)
    .filter(([, answer]) => answer.text !== '')
    .map(([stepId, answer]) => ({
      stepId,
      confirmed: answer.text === 'yes',
      confirmedAt: answer.at,
      // What was typed with its unit says it already.
      ...(answer.text === 'yes'
        ? {}
        : { note: answer.unit && !/[\p{L}'"′″’”]/u.test(answer.text) ? `${answer.text} ${answer.unit}` : answer.text }),
    }))
  const required = CONFIRMED.flatMap(({ ask, check, when }) => {
    const answer = answers[ask]
    return answer && when(answer) ? [{ stepId: check, confirmed: true, confirmedAt: answer.at }] : []
  })
  for (const { ask, check } of shortProcedure ? SHORT_PROCEDURE : []) {
    const answer = answers[ask]
    const given = required.some((one) => one.stepId === check)
    if (answer && isYes(answer) && !given) required.push({ stepId: check, confirmed: true, confirmedAt: answer.at })
  }
  const ids = new Set<string>(required.map((check) => check.stepId))
  return [...noted.filter((check) => !ids.has(check.stepId)), ...required]
}
