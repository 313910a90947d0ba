import type { Check } from './check-types.ts'
import { answersFrom } from './likelihood-rows.ts'

// Columns: worn bed, distributor, channelling, iron, injector or brine, meter or timer, bypass, undersized, water changed, no fault, mis-set, valve seals.

/** What a caller can answer. Chances are from memory, unverified, from how each fault works; the firm's own records will better them. */
export const TELEPHONE_CHECKS: readonly Check[] = [
  {
    id: 'beads',
    ...{ place: 'telephone', minutes: 2, reliability: 0.97, cautions: [], source: 'practice' },
    answers: answersFrom([
      ['yes', [8, 85, 1, 1, 1, 1, 1, 1, 1, 0, 1, 1]],
      ['no', [92, 15, 99, 99, 99, 99, 99, 99, 99, 100, 99, 99]],
    ]),
  },
  {
    id: 'tap-water',
    ...{ place: 'telephone', minutes: 2, reliability: 0.85, cautions: [], source: 'memory' },
    answers: answersFrom([
      ['soft', [10, 30, 8, 12, 5, 8, 8, 12, 20, 75, 12, 15]],
      ['at-times', [50, 30, 50, 50, 20, 32, 32, 68, 40, 20, 66, 40]],
      ['hard', [40, 40, 42, 38, 75, 60, 60, 20, 40, 5, 22, 45]],
    ]),
  },
  {
    id: 'bypass',
    ...{ place: 'telephone', minutes: 3, reliability: 0.96, cautions: [], source: 'practice' },
    answers: answersFrom([
      ['service', [98, 98, 98, 98, 98, 98, 42, 98, 98, 98, 98, 98]],
      ['open', [2, 2, 2, 2, 2, 2, 58, 2, 2, 2, 2, 2]],
    ]),
  },
  {
    id: 'salt',
    ...{ place: 'telephone', minutes: 2, reliability: 0.88, cautions: [], source: 'memory' },
    answers: answersFrom([
      ['none', [2, 2, 2, 2, 55, 52, 3, 1, 2, 3, 3, 8]],
      ['less', [5, 5, 5, 5, 25, 28, 6, 2, 4, 6, 30, 10]],
      ['usual', [78, 80, 80, 76, 13, 14, 82, 62, 76, 86, 60, 52]],
      ['more', [15, 13, 13, 17, 7, 6, 9, 35, 18, 5, 7, 30]],
    ]),
  },
  {
    id: 'brine',
    ...{ place: 'telephone', minutes: 3, reliability: 0.88, source: 'memory' },
    cautions: [
      {
        kind: 'water',
        says: 'overflow',
      },
    ],
    answers: answersFrom([
      ['usual', [92, 92, 92, 90, 28, 70, 92, 92, 92, 95, 92, 55]],
      ['high', [4, 4, 4, 6, 50, 14, 4, 3, 4, 3, 4, 37]],
      ['low', [4, 4, 4, 4, 22, 16, 4, 5, 4, 2, 4, 8]],
    ]),
  },
  {
    id: 'signs',
    ...{ place: 'telephone', minutes: 2, reliability: 0.95, source: 'practice' },
    cautions: [{ kind: 'water', says: 'overflow' }],
    answers: answersFrom([
      ['none', [90, 88, 90, 88, 40, 62, 88, 92, 92, 94, 92, 12]],
      ['overfull', [2, 2, 2, 2, 34, 8, 2, 2, 2, 2, 2, 22]],
      ['salty', [2, 2, 2, 2, 18, 4, 2, 2, 2, 2, 2, 14]],
      ['leak', [2, 4, 2, 2, 3, 2, 5, 1, 1, 0, 1, 20]],
      ['drain', [2, 2, 2, 2, 3, 6, 1, 1, 1, 1, 1, 28]],
      ['error', [2, 2, 2, 4, 2, 18, 2, 2, 2, 1, 2, 4]],
    ]),
  },
  {
    id: 'clock',
    ...{ place: 'telephone', minutes: 4, reliability: 0.9, source: 'memory' },
    cautions: [{ kind: 'electricity', says: 'look-only' }],
    answers: answersFrom([
      ['right', [94, 94, 94, 94, 91, 22, 94, 93, 94, 95, 88, 92]],
      ['wrong', [5, 5, 5, 5, 7, 48, 5, 5, 5, 4, 10, 6]],
      ['not-counting', [1, 1, 1, 1, 2, 30, 1, 2, 1, 1, 2, 2]],
    ]),
  },
  {
    id: 'change',
    ...{ place: 'telephone', minutes: 2, reliability: 0.85, cautions: [], source: 'memory' },
    answers: answersFrom([
      ['none', [84, 86, 84, 78, 83, 82, 76, 45, 19, 84, 50, 84]],
      ['water', [9, 7, 8, 16, 7, 7, 6, 7, 75, 9, 20, 7]],
      ['people', [5, 5, 6, 4, 5, 5, 4, 46, 4, 5, 10, 5]],
      ['work', [2, 2, 2, 2, 5, 6, 14, 2, 2, 2, 20, 4]],
    ]),
  },
]
