import { beadConditions } from '@almanac/records/bead-condition'
import { COMMON_PRACTICE } from '@almanac/units/sourced'
import { EMERGENCY } from './emergency-steps.ts'
import { EXCHANGE } from './exchange-steps.ts'
import { INSTALLATION } from './installation-steps.ts'
import { procedureFacts } from './procedure-facts.ts'
import type { Procedure, ProcedureContext, ProcedureKind } from './procedure-types.ts'
import type { ProcedureWords } from './procedure-words.ts'
import { beadChoice, buildSteps, caution, choice, confirm, number, type StepRule } from './step-rules.ts'
import {
  CHECK_BRINE_TANK,
  CHECK_SETTINGS,
  DEPRESSURISE,
  LEAVE_RUNNING,
  LOOK_ROUND,
  RUN_REGENERATION,
  TEST_AFTER,
  TEST_WATER,
} from './visit-steps.ts'

export type VisitKind = Exclude<ProcedureKind, 'rebed'>

const SAMPLE_BEADS: StepRule = {
  id: 'look-at-beads',
  minutes: 20,
  asks: [beadChoice('beads', [...beadConditions, 'not-seen']), number('rim-to-bed-in', 'depth')],
}

const CLEAN_BED: StepRule = {
  id: 'clean-bed',
  minutes: 50,
  cautions: [caution('chemical', 'cleaner-gas'), caution('water', 'cleaner-drink')],
  asks: [confirm('rinsed-clear'), number('cleaner-floz', 'fluidOunces')],
}

const REPAIR: StepRule = {
  id: 'repair',
  minutes: 40,
  asks: [choice('fault', ['injector', 'seals', 'motor', 'meter', 'bypass', 'distributor', 'drain', 'other'])],
}

const GENERAL: StepRule = { id: 'work', minutes: 20, asks: [confirm('work-done')] }

const PLANS: Record<VisitKind, readonly StepRule[]> = {
  'annual-visit': [LOOK_ROUND, TEST_WATER, CHECK_SETTINGS, CHECK_BRINE_TANK, RUN_REGENERATION, LEAVE_RUNNING],
  cleaning: [LOOK_ROUND, TEST_WATER, CHECK_BRINE_TANK, CLEAN_BED, RUN_REGENERATION, TEST_AFTER, LEAVE_RUNNING],
  inspection: [LOOK_ROUND, TEST_WATER, DEPRESSURISE, SAMPLE_BEADS, CHECK_SETTINGS, LEAVE_RUNNING],
  repair: [LOOK_ROUND, TEST_WATER, DEPRESSURISE, REPAIR, RUN_REGENERATION, TEST_AFTER, LEAVE_RUNNING],
  emergency: EMERGENCY,
  installation: INSTALLATION,
  exchange: EXCHANGE,
  delivery: [GENERAL],
}

/** The short procedure of a visit that is no rebed. Common practice, no source. */
export function visitProcedure(kind: VisitKind, context: ProcedureContext, words: ProcedureWords): Procedure {
  const { facts } = procedureFacts(context, words)
  const steps = buildSteps(PLANS[kind], facts, words)
  return {
    kind,
    title: words.steps(`procedure/${kind}`),
    steps,
    minutes: steps.reduce((sum, step) => sum + step.minutes, 0),
    assumptions: [],
    sources: [COMMON_PRACTICE],
  }
}
