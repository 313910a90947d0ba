import { beadConditions } from '@almanac/records/bead-condition'
import { tankConditions } from '@almanac/records/procedure-ask'
import { beadChoice, caution, choice, confirm, number, type StepRule } from './step-rules.ts'

/** From the closed softener to an empty, sound tank. */
export const STEPS_EMPTY: readonly StepRule[] = [
  {
    id: 'remove-valve',
    minutes: 6,
    cautions: [caution('pressure', 'still-rises'), caution('water', 'stuck-tube')],
    asks: [confirm('valve-off')],
  },
  {
    id: 'drain-tank',
    minutes: ({ commercial }) => (commercial ? 30 : 6),
    cautions: [caution('pressure', 'collapse'), caution('electricity', 'wet-vacuum')],
  },
  {
    id: 'take-out-media',
    text: ({ commercial }) => (commercial ? 'take-out-media/text-large' : 'take-out-media/text'),
    minutes: ({ resinFt3, commercial }) => (commercial ? 60 + 10 * resinFt3 : 9 + 5 * resinFt3),
    cautions: [
      caution('lifting', ({ commercial }) => (commercial ? 'tip-large' : 'tip-alone')),
      caution('slip', 'wet-beads'),
      caution('water', 'beads-drain'),
    ],
    asks: [
      number('old-tube-length-in', 'tube', true),
      choice('gravel-found', ['none', 'yes', 'mixed']),
      beadChoice('old-beads', beadConditions),
      choice('old-tube', ['sound', 'broken', 'too-short'], false),
      number('old-bed-depth-in', 'depth'),
    ],
  },
  {
    id: 'inspect-tank',
    minutes: 5,
    cautions: [caution('refer', 'crack')],
    asks: [choice('tank-condition', tankConditions)],
  },
]
