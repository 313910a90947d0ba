import { beadConditionWords } from '@almanac/records/bead-condition'
import type { TankCondition } from '@almanac/records/procedure-ask'
import { caution, choice, confirm, number, type StepRule, worded } from './step-rules.ts'

const TANK: Record<TankCondition, string> = { sound: 'Sound', cracked: 'Cracked, condemned', thread: 'Neck or thread damaged' }

/** From the closed softener to an empty, sound tank. */
export const STEPS_EMPTY: readonly StepRule[] = [
  {
    id: 'remove-valve',
    title: 'Take the valve off',
    text: 'Disconnect drain and brine lines. Unscrew the valve by hand, lift it straight off the tube and lay it on something clean.',
    minutes: 6,
    cautions: [
      caution('pressure', 'If water still rises while the valve is loosened, stop: the pressure is not off.'),
      caution('water', 'Never force a stuck tube by the valve: it breaks the basket or the neck.'),
    ],
    asks: [confirm('valve-off', 'Valve off')],
  },
  {
    id: 'drain-tank',
    title: 'Drain with air let in',
    text: 'Keep the opening free while siphoning or vacuuming the water out, so that air comes in as water goes out.',
    minutes: ({ commercial }) => (commercial ? 30 : 6),
    cautions: [
      caution('pressure', 'A vacuum collapses a fibreglass tank: keep it vented all the time.'),
      caution('electricity', 'Plug a wet vacuum only into a socket with residual-current (ground-fault) protection.'),
    ],
  },
  {
    id: 'take-out-media',
    title: 'Take out the tube and the old bed',
    text: ({ commercial }) =>
      commercial
        ? 'Vacuum or flush the bed out in place; do not tip the tank. Take out the tube once it comes loose.'
        : 'With two people tip the tank over a sheet, or vacuum it where it stands. Take out the tube once it comes loose. Collect every bead.',
    minutes: ({ resinFt3, commercial }) => (commercial ? 60 + 10 * resinFt3 : 9 + 5 * resinFt3),
    cautions: [
      caution('lifting', 'A full tank is never tipped by one person.', ({ commercial }) => !commercial),
      caution('lifting', 'A commercial tank is emptied where it stands, never tipped.', ({ commercial }) => commercial),
      caution('slip', 'Wet beads on the floor are as slippery as ice: sheet under the work, sweep at once.'),
      caution('water', 'No beads to the drain: they set hard in the trap.'),
    ],
    asks: [
      number('old-tube-length-in', 'Length of the old tube with its basket', 'tube', true),
      choice('gravel-found', 'Gravel found', ['none: None', 'yes: Yes', 'mixed: Mixed into the resin']),
      choice('old-beads', 'Old beads', worded(beadConditionWords)),
      choice('old-tube', 'Old tube and basket', ['sound: Sound', 'broken: Broken or slotted', 'too-short: Wrong length'], false),
      number('old-bed-depth-in', 'Depth of the old bed', 'depth'),
    ],
  },
  {
    id: 'inspect-tank',
    title: 'Rinse and inspect the tank',
    text: 'Rinse the tank. Look over the inside with a lamp, the neck thread, the dimple at the bottom and the foot.',
    minutes: 5,
    cautions: [caution('refer', 'A crack condemns the tank: no patching. Leave it in bypass and say what follows.')],
    asks: [choice('tank-condition', 'Tank', worded(TANK))],
  },
]
