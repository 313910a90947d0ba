import { shutOffs, stopCases } from '@almanac/records/procedure-ask'
import { caution, choice, confirm, filled, number, type StepRule } from './step-rules.ts'

/** How one tank is shut off while the other serves; tanks whose working together is not recorded are taken to work at once. */
const TWIN_BYPASS = {
  'twin-alternating': 'prove-bypass/text-alternating',
  'twin-parallel': 'prove-bypass/text-parallel',
  single: 'prove-bypass/text-parallel',
} as const

/** From arrival to a softener without pressure and without power. Pressure goes off before power: without power the valve cannot be moved to let it out. */
export const STEPS_BEFORE: readonly StepRule[] = [
  {
    id: 'stop-and-refer',
    minutes: 3,
    cautions: [caution('refer', 'stop-cases'), caution('lifting', 'way-out', (facts) => facts.access !== 'level')],
    asks: [choice('stop-case', stopCases)],
  },
  {
    id: 'check-water',
    minutes: 6,
    cautions: [caution('pressure', ({ highPressure }) => (highPressure ? 'pressure-high' : 'pressure-read'))],
    asks: [
      number('hardness-raw-gpg', 'hardness', true),
      // Nothing comes out of a tank that stands empty in bypass.
      number('hardness-outlet-before-gpg', 'hardness', true, filled),
      number('pressure-psi', 'pressure'),
      number('iron-mg-l', 'iron', false, (facts) => facts.waterSource !== 'town'),
      number('chlorine-total-mg-l', 'chlorine', false, (facts) => facts.waterSource !== 'private-well'),
    ],
  },
  {
    id: 'record-as-found',
    minutes: 4,
    asks: [
      confirm('photographed'),
      confirm('settings-noted'),
      confirm('pre-treatment', { required: false }),
      number('salt-dose-lb', 'saltDose'),
    ],
  },
  {
    id: 'close-hot-side',
    minutes: 1,
    cautions: [caution('pressure', 'heater-shut'), caution('water', 'hot-back')],
    asks: [confirm('hot-side-closed')],
  },
  {
    id: 'prove-bypass',
    text: ({ hasBypass, twin }) =>
      twin ? TWIN_BYPASS[twin.arrangement] : hasBypass === false ? 'prove-bypass/text-none' : 'prove-bypass/text',
    minutes: 4,
    cautions: [
      caution('water', 'bypass-leaks'),
      caution('pressure', 'twin-pressure', ({ twin }) => twin != null),
      caution('refer', ({ hasBypass }) => (hasBypass === false ? 'water-off' : 'water-hard')),
    ],
    asks: [choice('bypass-holds', shutOffs)],
  },
  {
    id: 'pressure-off',
    text: ({ valveNeedsPower }) => (valveNeedsPower === false ? 'pressure-off/text-by-hand' : 'pressure-off/text'),
    minutes: 4,
    cautions: [caution('pressure', 'full-pressure')],
    asks: [confirm('pressure-zero'), confirm('pressure-second')],
  },
  {
    id: 'power-off',
    minutes: 1,
    when: ({ valveNeedsPower }) => valveNeedsPower !== false,
    cautions: [caution('electricity', 'plug')],
    asks: [confirm('unplugged')],
  },
  {
    id: 'bonding-jumper',
    text: ({ metalPipe }) => (metalPipe === true ? 'bonding-jumper/text' : 'bonding-jumper/text-unknown'),
    minutes: 2,
    when: ({ metalPipe }) => metalPipe !== false,
    cautions: [caution('electricity', 'ground')],
    asks: [choice('bonding', ['fitted', 'not-needed'])],
  },
]
