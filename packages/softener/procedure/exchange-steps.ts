import { RESTART, rebedStep } from './rebed-step.ts'
import { caution, confirm, number, type StepRule } from './step-rules.ts'
import { LOOK_ROUND } from './visit-steps.ts'

/** Another tank with its bed in the place of the old one, which leaves as it stands: nothing is emptied in the house. Common practice, no source. */
export const EXCHANGE: readonly StepRule[] = [
  LOOK_ROUND,
  ...(['check-water', 'close-hot-side', 'prove-bypass', 'pressure-off', 'power-off', 'bonding-jumper', 'remove-valve'] as const).map(
    rebedStep,
  ),
  {
    id: 'set-tank',
    title: 'set-tank-exchange',
    text: 'set-tank/text-exchange',
    minutes: 25,
    cautions: [
      caution('lifting', ({ tips }) => (tips === null ? 'carry-tank-unknown' : 'carry-tank')),
      caution('slip', 'wet-beads'),
      caution('water', 'cap-left'),
    ],
    asks: [
      confirm('old-tank-out'),
      number('resin-ft3', 'resin', true),
      number('gravel-lb', 'gravel'),
      number('new-tube-length-in', 'tube'),
      confirm('cap-out', { says: 'cap-out-new' }),
    ],
  },
  ...RESTART,
]
