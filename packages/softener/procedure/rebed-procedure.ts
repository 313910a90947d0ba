import { COMMON_PRACTICE } from '@almanac/units/sourced'
import { nioshLifting } from '../kit/niosh-lifting.ts'
import { procedureFacts } from './procedure-facts.ts'
import type { Procedure, ProcedureContext, ProcedureStep } from './procedure-types.ts'
import { STEPS_BEFORE } from './rebed-steps-before.ts'
import { STEPS_EMPTY } from './rebed-steps-empty.ts'
import { STEPS_FILL } from './rebed-steps-fill.ts'
import { STEPS_START } from './rebed-steps-start.ts'
import { buildSteps } from './step-rules.ts'

/**
 * The steps of a rebed for this tank and site, in order, each with the cautions that stand before it and what is recorded at it. Never
 * refuses: where facts are missing the steps cover both cases and `assumptions` says so. Order and minutes are common practice.
 */
export function rebedProcedure(context: ProcedureContext): Procedure {
  const { facts, assumptions } = procedureFacts(context)
  const steps = buildSteps([...STEPS_BEFORE, ...STEPS_EMPTY, ...STEPS_FILL, ...STEPS_START], facts).map((step) =>
    withLiftingIndex(step, facts.resinFt3, facts.bagLift),
  )
  const minutes = steps.reduce((sum, step) => sum + step.minutes, 0)
  return { kind: 'rebed', title: 'Rebed', steps, minutes, assumptions, sources: [COMMON_PRACTICE, 'NIOSH 94-110'] }
}

/** The bag lifted from the floor to a tank neck, by the NIOSH equation, beside the lifting caution of the pouring step. */
function withLiftingIndex(step: ProcedureStep, resinFt3: number, bagText: string): ProcedureStep {
  if (step.id !== 'pour-resin') return step
  const bagLb = 51 * Math.min(1, resinFt3)
  const lift = nioshLifting({ weightLb: bagLb, horizontalIn: 14, verticalIn: 6, travelIn: 36, coupling: 'poor' })
  if (!lift.ok || lift.value.index === null) return step
  const text = `A bag of ${bagText} lifted from the floor has a lifting index of ${lift.value.index.toFixed(1)} (NIOSH 94-110; level dry floor, no stairs): split it or lift it as a team.`
  const cautions = step.cautions.map((item) =>
    item.kind === 'lifting' && lift.value.index !== null && lift.value.index > 1 ? { ...item, text } : item,
  )
  return { ...step, cautions }
}
