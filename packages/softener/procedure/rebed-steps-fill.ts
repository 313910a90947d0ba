import { caution, confirm, number, type StepRule } from './step-rules.ts'

/** From the empty tank to the valve back in its seat. */
export const STEPS_FILL: readonly StepRule[] = [
  {
    id: 'cut-tube',
    dose: 'cutLength',
    text: ({ hub }) => (hub ? 'cut-tube/text-hub' : 'cut-tube/text'),
    minutes: 3,
    cautions: [caution('water', 'tube-length'), caution('water', 'clean-hands')],
    asks: [number('new-tube-length-in', 'tube', true)],
  },
  {
    id: 'cap-tube',
    minutes: 2,
    cautions: [caution('water', 'bead-inside')],
    asks: [confirm('cap-on')],
  },
  { id: 'water-first', minutes: 2 },
  {
    id: 'pour-gravel',
    dose: 'gravel',
    text: ({ gravel }) => (gravel === null ? 'pour-gravel/text-unknown' : 'pour-gravel/text'),
    minutes: ({ commercial }) => (commercial ? 30 : 3),
    when: ({ gravel }) => gravel !== false,
    cautions: [caution('water', 'raise-gravel'), caution('chemical', 'quartz')],
    asks: [number('gravel-lb', 'gravel')],
  },
  {
    id: 'pour-resin',
    dose: 'resin',
    minutes: ({ resinFt3, commercial }) => (commercial ? 20 + 6 * resinFt3 : 5 + 4 * resinFt3),
    cautions: [
      caution('water', 'raise-resin'),
      caution('chemical', 'dry-beads'),
      caution('lifting', ({ liftingIndex }) => (liftingIndex !== null && liftingIndex > 1 ? 'lift-bag-index' : 'lift-bag')),
      caution('slip', 'spilled-beads'),
    ],
    asks: [number('resin-ft3', 'resin', true)],
  },
  {
    id: 'cap-out',
    minutes: 2,
    cautions: [caution('water', 'cap-left')],
    asks: [confirm('cap-out')],
  },
  {
    id: 'seat-valve',
    minutes: 6,
    cautions: [caution('pressure', 'neck-force'), caution('chemical', 'grease')],
    asks: [confirm('seals-renewed'), confirm('valve-inspected')],
  },
  {
    id: 'reconnect',
    minutes: 6,
    cautions: [
      caution('electricity', 'jumper-stays', ({ metalPipe }) => metalPipe !== false),
      caution('water', 'plastic-thread'),
      caution('water', 'solder', ({ metalPipe }) => metalPipe !== false),
      caution('water', 'certified'),
    ],
    asks: [confirm('air-gap'), confirm('aerators-off', { required: false })],
  },
]
