import { beadConditions } from '@almanac/records/bead-condition'
import { gravelsFound, tankConditions } from '@almanac/records/procedure-ask'
import { beadChoice, caution, choice, confirm, filled, number, type StepRule } from './step-rules.ts'

/** From the closed softener to an empty, sound tank; one that an earlier visit left empty is opened and looked over alone. */
export const STEPS_EMPTY: readonly StepRule[] = [
  {
    id: 'remove-valve',
    minutes: 6,
    cautions: [
      caution('water', 'twin-lines', ({ twin }) => twin != null),
      caution('pressure', 'still-rises'),
      caution('water', 'stuck-tube'),
    ],
    asks: [confirm('valve-off')],
  },
  {
    id: 'measure-bed',
    when: filled,
    minutes: 2,
    asks: [number('old-bed-depth-in', 'depth'), beadChoice('old-beads', beadConditions)],
  },
  {
    id: 'drain-tank',
    when: filled,
    minutes: ({ commercial }) => (commercial ? 30 : 6),
    cautions: [caution('pressure', 'collapse'), caution('electricity', 'wet-vacuum')],
  },
  {
    id: 'take-out-media',
    when: filled,
    text: ({ tips }) => (tips === null ? 'take-out-media/text-unknown' : tips ? 'take-out-media/text' : 'take-out-media/text-large'),
    minutes: ({ resinFt3, commercial }) => (commercial ? 60 + 10 * resinFt3 : 8 + 5 * resinFt3),
    cautions: [
      caution('lifting', ({ tips }) => (tips === null ? 'tip-alone' : tips ? 'tip-weight' : 'tip-large')),
      caution('slip', 'wet-beads'),
      caution('water', 'beads-drain'),
    ],
    asks: [
      number('old-tube-length-in', 'tube', true),
      choice('gravel-found', gravelsFound),
      choice('old-tube', ['sound', 'broken', 'too-short'], false),
    ],
  },
  {
    id: 'inspect-tank',
    minutes: 5,
    cautions: [caution('refer', 'crack')],
    asks: [choice('tank-condition', tankConditions)],
  },
]
