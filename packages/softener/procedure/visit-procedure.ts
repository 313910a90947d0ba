import { beadConditionWords } from '@almanac/records/bead-condition'
import { COMMON_PRACTICE } from '@almanac/units/sourced'
import { procedureFacts } from './procedure-facts.ts'
import type { Procedure, ProcedureContext, ProcedureKind } from './procedure-types.ts'
import { buildSteps, caution, choice, confirm, number, type StepRule, worded } from './step-rules.ts'
import { CHECK_BRINE_TANK, CHECK_SETTINGS, DEPRESSURISE, LEAVE_RUNNING, LOOK_ROUND, RUN_REGENERATION, TEST_WATER } from './visit-steps.ts'

export type VisitKind = Exclude<ProcedureKind, 'rebed'>

const SAMPLE_BEADS: StepRule = {
  id: 'look-at-beads',
  title: 'Look at the beads',
  text: 'Where the valve comes off easily, take a spoonful from the top of the bed: firm or soft, whole or broken, colour. Measure from the rim down to the bed.',
  minutes: 20,
  asks: [
    choice('beads', 'Beads', [...worded(beadConditionWords), 'not-seen: Not seen'], true),
    number('rim-to-bed-in', 'From the rim of the opening down to the bed', 'depth'),
  ],
}

const CLEAN_BED: StepRule = {
  id: 'clean-bed',
  title: 'Clean the bed',
  text: 'Use a cleaner made for iron-fouled softener resin, by the maker’s dose and time. Rinse until the drain is clear, then run a full regeneration.',
  minutes: 50,
  cautions: [
    caution('chemical', 'Never mix bleach with iron cleaner: toxic gas. Air the room, eye protection, gloves.'),
    caution('water', 'Softener in bypass until the cleaner is rinsed out: nobody drinks it.'),
  ],
  asks: [confirm('rinsed-clear', 'Rinsed until clear'), number('cleaner-floz', 'Cleaner used', 'fluidOunces')],
}

const REPAIR: StepRule = {
  id: 'repair',
  title: 'Find and mend the fault',
  text: 'Find the fault, change the part, note what was wrong.',
  minutes: 40,
  asks: [
    choice('fault', 'Fault', [
      'injector: Injector or brine line',
      'seals: Seals or piston',
      'motor: Motor or control',
      'meter: Meter',
      'bypass: Bypass',
      'distributor: Distributor',
      'drain: Drain',
      'other: Other',
    ]),
  ],
}

const STOP_BEADS: StepRule = {
  id: 'stop-beads',
  title: 'Stop the beads',
  text: 'Softener in bypass. Close the hot water. Appliances off. Then flush from the main, tap by tap, aerators off; clean screens, the heater and the ice-maker.',
  minutes: 60,
  cautions: [caution('water', 'Beads at the taps are an emergency the same day: bypass first, then everything else.')],
  asks: [
    confirm('bypassed', 'In bypass'),
    confirm('flushed', 'Flushed from the main until no beads come'),
    choice('cause', 'Cause', [
      'distributor: Broken distributor',
      'worn: Worn beads',
      'filled-wrong: Filled wrongly',
      'unknown: Not found yet',
    ]),
  ],
}

const GENERAL: StepRule = {
  id: 'work',
  title: 'Do the work',
  text: 'Do what the job says; note what was done and what was found.',
  minutes: 45,
  asks: [confirm('work-done', 'Work done as the job says')],
}

const PLANS: Record<VisitKind, { title: string; rules: readonly StepRule[] }> = {
  'annual-visit': {
    title: 'Annual visit',
    rules: [LOOK_ROUND, TEST_WATER, CHECK_SETTINGS, CHECK_BRINE_TANK, RUN_REGENERATION, LEAVE_RUNNING],
  },
  cleaning: { title: 'Cleaning', rules: [LOOK_ROUND, TEST_WATER, CHECK_BRINE_TANK, CLEAN_BED, RUN_REGENERATION, LEAVE_RUNNING] },
  inspection: { title: 'Inspection', rules: [LOOK_ROUND, TEST_WATER, DEPRESSURISE, SAMPLE_BEADS, CHECK_SETTINGS, LEAVE_RUNNING] },
  repair: { title: 'Repair', rules: [LOOK_ROUND, TEST_WATER, DEPRESSURISE, REPAIR, RUN_REGENERATION, LEAVE_RUNNING] },
  emergency: { title: 'Emergency: beads at the taps', rules: [STOP_BEADS, LOOK_ROUND, TEST_WATER, LEAVE_RUNNING] },
  other: { title: 'Visit', rules: [LOOK_ROUND, GENERAL, LEAVE_RUNNING] },
}

/** The short procedure of a visit that is no rebed; any kind not listed gets the general one. Common practice, no source. */
export function visitProcedure(kind: VisitKind, context: ProcedureContext): Procedure {
  const { facts } = procedureFacts(context)
  const plan = PLANS[kind]
  const steps = buildSteps(plan.rules, facts)
  return {
    kind,
    title: plan.title,
    steps,
    minutes: steps.reduce((sum, step) => sum + step.minutes, 0),
    assumptions: [],
    sources: [COMMON_PRACTICE],
  }
}
