import type { ProcedureStepId } from '@almanac/records/procedure-step'
import { STEPS_BEFORE } from './rebed-steps-before.ts'
import { STEPS_FILL } from './rebed-steps-fill.ts'
import { STEPS_START } from './rebed-steps-start.ts'
import { caution, confirm, number, type StepRule } from './step-rules.ts'
import { LOOK_ROUND } from './visit-steps.ts'

const REBED = new Map([...STEPS_BEFORE, ...STEPS_FILL, ...STEPS_START].map((rule) => [rule.id, rule]))

/** A step of the rebed that an installation shares. */
function shared(id: ProcedureStepId): StepRule {
  const rule = REBED.get(id)
  if (!rule) throw new Error(`There’s no rebed step ${id}.`)
  return rule
}

/** A new softener: the water off, the tank set and filled or looked into, then as after a rebed. Common practice, no source. */
export const INSTALLATION: readonly StepRule[] = [
  LOOK_ROUND,
  {
    id: 'check-water',
    text: 'check-water/text-new',
    minutes: 6,
    cautions: [caution('pressure', ({ highPressure }) => (highPressure ? 'pressure-high' : 'pressure-read'))],
    asks: [number('hardness-raw-gpg', 'hardness', true), number('pressure-psi', 'pressure')],
  },
  shared('close-hot-side'),
  { ...shared('prove-bypass'), text: 'prove-bypass/text-none' },
  shared('bonding-jumper'),
  {
    id: 'set-tank',
    minutes: 75,
    cautions: [caution('lifting', 'lift-bag'), caution('water', 'cap-left')],
    asks: [
      number('resin-ft3', 'resin', true),
      number('gravel-lb', 'gravel'),
      number('new-tube-length-in', 'tube'),
      confirm('cap-out', { says: 'cap-out-new' }),
    ],
  },
  shared('seat-valve'),
  shared('reconnect'),
  shared('start-in-backwash'),
  shared('run-clear'),
  shared('leaks-first'),
  shared('sanitise'),
  shared('check-brine'),
  shared('test-outlet'),
  shared('full-regeneration'),
  shared('hand-over'),
]
