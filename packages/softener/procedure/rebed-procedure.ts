import { COMMON_PRACTICE } from '@almanac/units/sourced'
import { procedureFacts } from './procedure-facts.ts'
import type { Procedure, ProcedureContext } from './procedure-types.ts'
import type { ProcedureWords } from './procedure-words.ts'
import { STEPS_BEFORE } from './rebed-steps-before.ts'
import { STEPS_EMPTY } from './rebed-steps-empty.ts'
import { STEPS_FILL } from './rebed-steps-fill.ts'
import { STEPS_START } from './rebed-steps-start.ts'
import { buildSteps } from './step-rules.ts'

/**
 * The steps of a rebed for this tank and site, in order, each with the cautions that stand before it and what is recorded at it. Never
 * refuses: where facts are missing the steps cover both cases and `assumptions` says so. Order and minutes are common practice.
 */
export function rebedProcedure(context: ProcedureContext, words: ProcedureWords): Procedure {
  const { facts, assumptions } = procedureFacts(context, words)
  const steps = buildSteps([...STEPS_BEFORE, ...STEPS_EMPTY, ...STEPS_FILL, ...STEPS_START], facts, words)
  const minutes = steps.reduce((sum, step) => sum + step.minutes, 0)
  return { kind: 'rebed', title: words.steps('procedure/rebed'), steps, minutes, assumptions, sources: [COMMON_PRACTICE, 'NIOSH 94-110'] }
}
