import type { ProcedureStepId } from '@almanac/records/procedure-step'
import { STEPS_BEFORE } from './rebed-steps-before.ts'
import { STEPS_EMPTY } from './rebed-steps-empty.ts'
import { STEPS_FILL } from './rebed-steps-fill.ts'
import { STEPS_START } from './rebed-steps-start.ts'
import type { StepRule } from './step-rules.ts'

const REBED = new Map([...STEPS_BEFORE, ...STEPS_EMPTY, ...STEPS_FILL, ...STEPS_START].map((rule) => [rule.id, rule]))

/** A step of the rebed that another kind of visit shares. */
export function rebedStep(id: ProcedureStepId): StepRule {
  const rule = REBED.get(id)
  if (!rule) throw new Error(`There’s no rebed step ${id}.`)
  return rule
}

/** From the valve on its tank to handing over: as after a rebed, so wherever a tank was set. */
export const RESTART: readonly StepRule[] = [
  ...(['seat-valve', 'reconnect', 'start-in-backwash', 'run-clear', 'leaks-first', 'sanitise', 'check-brine'] as const),
  ...(['test-outlet', 'full-regeneration', 'hand-over'] as const),
].map(rebedStep)
