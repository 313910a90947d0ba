import { RESTART, rebedStep } from './rebed-step.ts'
import { caution, confirm, number, type StepRule } from './step-rules.ts'
import { LOOK_ROUND } from './visit-steps.ts'

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
  rebedStep('close-hot-side'),
  { ...rebedStep('prove-bypass'), text: 'prove-bypass/text-none' },
  rebedStep('bonding-jumper'),
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
  ...RESTART,
]
