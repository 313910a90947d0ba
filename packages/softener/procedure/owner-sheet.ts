import type { GuidePhotographKind } from '@almanac/records/picture-kind'
import type { ProcedureStepId } from '@almanac/records/procedure-step'
import { stopOfAnswer } from '@almanac/records/visit-stop'
import type { OwnerTold } from '../choice/owner-question.ts'
import type { Ask, ProcedureContext, ProcedureStep } from './procedure-types.ts'
import type { ProcedureWords } from './procedure-words.ts'
import { rebedProcedure } from './rebed-procedure.ts'

type HoldKind = Extract<GuidePhotographKind, 'cap' | 'bypass'>

/**
 * Where an owner goes no further before the office has looked at a photograph, and of what: the cap out of the tube, which would shut the house's water off; and the bypass, with
 * the lines back on, still closed to the softener, since the next step opens the water. Common practice, no source.
 */
const HOLD_POINTS: Readonly<Partial<Record<ProcedureStepId, HoldKind>>> = { 'cap-out': 'cap', reconnect: 'bypass' }

/** A step as an owner sees it: `hold` is what is photographed before anything follows. */
export type OwnerStep = ProcedureStep & { hold: HoldKind | null }

/** Whether an answer ends an owner's work: as it would a crew's, and a bypass that lets water by, which a crew can work with. */
export const endsOwnersWork = (ask: string, answer: string): boolean =>
  stopOfAnswer(ask, answer) !== null || (ask === 'bypass-holds' && answer !== 'holds')

/** What an owner answers: what must be done, and what may end the work. What a crew measures or notes is not asked of them. */
const ownersAsk = ({ kind, id, required, choices }: Ask): boolean =>
  kind === 'confirm' ? required : choices.some(({ value }) => stopOfAnswer(id, value) !== null)

/** The steps of an owner's rebed: a crew's for this tank, by what was answered before the go. */
export function ownerSheet(context: ProcedureContext, told: Partial<OwnerTold>, words: ProcedureWords): OwnerStep[] {
  const { hasBypass, valveNeedsPower, metalPipe, pressurePsi, access } = told
  const { steps } = rebedProcedure({ ...context, hasBypass, valveNeedsPower, metalPipe, pressurePsi, access }, words)
  return steps.map((step) => ({ ...step, asks: step.asks.filter(ownersAsk), hold: HOLD_POINTS[step.id] ?? null }))
}

/** Whether something that a step asks isn’t answered yet. */
export const stillOpen = (step: OwnerStep, answers: Readonly<Record<string, string>>): boolean =>
  step.asks.some(({ id, kind, choices }) =>
    kind === 'confirm' ? answers[id] !== 'yes' : !choices.some(({ value }) => value === answers[id]),
  )

/** The answers that somebody who is at a step has given, as far as they say how open the softener is; the step itself may be half done. */
export function answersUpTo(sheet: readonly OwnerStep[], step: ProcedureStepId): Record<string, string> {
  const at = sheet.findIndex((one) => one.id === step)
  const asks = sheet.slice(0, at + 1).flatMap((one) => one.asks)
  return Object.fromEntries(
    asks.map(({ id, kind, choices }) => [
      id,
      kind === 'confirm' ? 'yes' : (choices.find(({ value }) => stopOfAnswer(id, value) === null)?.value ?? ''),
    ]),
  )
}
