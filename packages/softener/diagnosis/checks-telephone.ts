import { COMMON_PRACTICE, FROM_MEMORY } from '@almanac/units/sourced'
import type { Check } from './check-types.ts'
import { answersFrom } from './likelihood-rows.ts'

// Columns: worn bed, distributor, channelling, iron, injector or brine, meter or timer, bypass, undersized, water changed, no fault.

/** What a caller can answer. Chances are from memory, unverified, from how each fault works; the firm's own records will better them. */
export const TELEPHONE_CHECKS: readonly Check[] = [
  {
    id: 'beads',
    title: 'Are there beads at the taps?',
    how: 'Tiny balls like amber sand, in the aerator of a tap or in the toilet tank.',
    ...{ place: 'telephone', minutes: 2, reliability: 0.97, cautions: [], source: COMMON_PRACTICE },
    reason: 'Whole beads leave only through a broken basket or tube; a worn bed gives fragments now and then.',
    answers: answersFrom([
      ['yes', 'Yes, beads', [8, 85, 1, 1, 1, 1, 1, 1, 1, 0]],
      ['no', 'None', [92, 15, 99, 99, 99, 99, 99, 99, 99, 100]],
    ]),
  },
  {
    id: 'tap-water',
    title: 'How is the water at the cold kitchen tap?',
    how: 'Soap lathers in soft water; hard water leaves spots and scale. Make sure this tap gets softened water.',
    ...{ place: 'telephone', minutes: 2, reliability: 0.85, cautions: [], source: FROM_MEMORY },
    reason: 'A bed with less capacity goes hard toward the end of its run. With no brine or no regeneration it’s always hard.',
    answers: answersFrom([
      ['soft', 'Soft', [10, 30, 8, 12, 5, 8, 8, 12, 20, 75]],
      ['at-times', 'Hard at times', [50, 30, 50, 50, 20, 32, 32, 68, 40, 20]],
      ['hard', 'Always hard', [40, 40, 42, 38, 75, 60, 60, 20, 40, 5]],
    ]),
  },
  {
    id: 'bypass',
    title: 'Which position is the bypass in?',
    how: 'Levers or knobs behind the valve: in service they point along the pipes; a push bar is pushed in or out.',
    ...{ place: 'telephone', minutes: 3, reliability: 0.96, cautions: [], source: COMMON_PRACTICE },
    reason: 'You can see if it’s in bypass. A leaking bypass looks right; test at the valve outlet to find it.',
    answers: answersFrom([
      ['service', 'In service', [98, 98, 98, 98, 98, 98, 42, 98, 98, 98]],
      ['open', 'In bypass, or half', [2, 2, 2, 2, 2, 2, 58, 2, 2, 2]],
    ]),
  },
  {
    id: 'salt',
    title: 'Does the salt go down?',
    how: 'Compare with how often they added salt a year ago.',
    ...{ place: 'telephone', minutes: 2, reliability: 0.88, cautions: [], source: FROM_MEMORY },
    reason: 'Salt that stays means no brine drawn or no regeneration. Salt used but hard water points to the bed.',
    answers: answersFrom([
      ['none', 'Not at all', [2, 2, 2, 2, 55, 52, 3, 1, 2, 3]],
      ['less', 'Less than it did', [5, 5, 5, 5, 25, 28, 6, 2, 4, 6]],
      ['usual', 'As usual', [78, 80, 80, 76, 13, 14, 82, 62, 76, 86]],
      ['more', 'More than it did', [15, 13, 13, 17, 7, 6, 9, 35, 18, 5]],
    ]),
  },
  {
    id: 'brine',
    title: 'How high is the water in the brine tank?',
    how: 'Lift the lid. Usually it’s below the salt, a hand’s width to halfway up. Tap the salt with a broom handle: hollow means a bridge.',
    ...{ place: 'telephone', minutes: 3, reliability: 0.88, source: FROM_MEMORY },
    cautions: [
      {
        kind: 'water',
        text: 'Keep the overflow free: a brine tank that goes on filling floods the floor. If it rises, put the softener in bypass.',
      },
    ],
    reason: 'If brine isn’t drawn, the level is high. A failed refill or a salt bridge leaves it dry.',
    answers: answersFrom([
      ['usual', 'Usual', [92, 92, 92, 90, 28, 70, 92, 92, 92, 95]],
      ['high', 'High', [4, 4, 4, 6, 50, 14, 4, 3, 4, 3]],
      ['low', 'Dry, or a hollow', [4, 4, 4, 4, 22, 16, 4, 5, 4, 2]],
    ]),
  },
  {
    id: 'clock',
    title: 'Is the valve powered, clock right?',
    how: 'Is the display lit, the time of day right, and does the gallons counter move while a tap runs?',
    ...{ place: 'telephone', minutes: 4, reliability: 0.9, source: FROM_MEMORY },
    cautions: [{ kind: 'electricity', text: 'Look only: no cover off, and nothing touched with wet hands or on a wet floor.' }],
    reason: 'A dead display, a wrong clock or a stuck counter is the fault itself.',
    answers: answersFrom([
      ['right', 'All right', [94, 94, 94, 94, 91, 22, 94, 93, 94, 95]],
      ['wrong', 'Dark, or wrong time', [5, 5, 5, 5, 7, 48, 5, 5, 5, 4]],
      ['not-counting', 'Does not count', [1, 1, 1, 1, 2, 30, 1, 2, 1, 1]],
    ]),
  },
  {
    id: 'change',
    title: 'Has anything changed lately?',
    how: 'New supply, well or pump, water-works, disinfectant, more people, a new bath or sprinkler on soft water.',
    ...{ place: 'telephone', minutes: 2, reliability: 0.85, cautions: [], source: FROM_MEMORY },
    reason: 'The softener wasn’t set for different water or more people.',
    answers: answersFrom([
      ['none', 'Nothing', [84, 86, 84, 78, 83, 82, 76, 45, 19, 84]],
      ['water', 'The water', [9, 7, 8, 16, 7, 7, 6, 7, 75, 9]],
      ['people', 'More use', [5, 5, 6, 4, 5, 5, 4, 46, 4, 5]],
      ['work', 'Someone worked on it', [2, 2, 2, 2, 5, 6, 14, 2, 2, 2]],
    ]),
  },
]
