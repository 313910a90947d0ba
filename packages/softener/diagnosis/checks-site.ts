import type { Check } from './check-types.ts'
import { answersFrom } from './likelihood-rows.ts'

// Columns: worn bed, distributor, channelling, iron, injector or brine, meter or timer, bypass, undersized, water changed, no fault, mis-set, valve seals.

/** What is seen or measured at the softener. Chances are from memory, unverified, from how each fault works. */
export const SITE_CHECKS: readonly Check[] = [
  {
    id: 'pressure',
    ...{ place: 'telephone', minutes: 5, reliability: 0.88, source: 'practice' },
    cautions: [{ kind: 'pressure', says: 'turn-slowly' }],
    answers: answersFrom([
      ['none', [52, 60, 60, 58, 92, 93, 93, 76, 88, 84, 90, 90]],
      ['service', [43, 34, 35, 37, 3, 3, 2, 18, 6, 3, 4, 4]],
      ['both', [5, 6, 5, 5, 5, 4, 5, 6, 6, 13, 6, 6]],
    ]),
  },
  {
    id: 'iron',
    ...{ place: 'telephone', minutes: 3, reliability: 0.9, source: 'practice' },
    cautions: [{ kind: 'chemical', says: 'poured-before' }],
    answers: answersFrom([
      ['none', [86, 90, 80, 12, 86, 82, 78, 86, 72, 93, 84, 86]],
      ['stains', [14, 10, 20, 88, 14, 18, 22, 14, 28, 7, 16, 14]],
    ]),
  },
  {
    id: 'outlet',
    // A soft outlet clears the bed: two readings with the same kit are seldom both mistaken.
    ...{ place: 'site', minutes: 10, reliability: 0.98, cautions: [], source: 'practice' },
    answers: answersFrom([
      ['both-soft', [10, 30, 8, 10, 5, 8, 2, 30, 22, 90, 30, 20]],
      ['tap-hard', [0, 1, 0, 0, 2, 2, 88, 3, 2, 4, 2, 3]],
      ['both-hard', [90, 69, 92, 90, 93, 90, 10, 67, 76, 6, 68, 77]],
    ]),
  },
  {
    id: 'settings',
    ...{ place: 'site', minutes: 4, reliability: 0.97, cautions: [], source: 'practice' },
    answers: answersFrom([
      ['match', [92, 92, 92, 92, 92, 82, 92, 82, 62, 95, 4, 92]],
      ['low', [5, 5, 5, 5, 5, 10, 5, 12, 33, 3, 88, 5]],
      ['high', [3, 3, 3, 3, 3, 8, 3, 6, 5, 2, 8, 3]],
    ]),
  },
  {
    id: 'draws-brine',
    ...{ place: 'site', minutes: 20, reliability: 0.96, source: 'practice' },
    cautions: [
      { kind: 'water', says: 'drain-takes-it' },
      { kind: 'electricity', says: 'cover-on' },
    ],
    answers: answersFrom([
      ['yes', [97, 94, 95, 93, 14, 92, 97, 97, 97, 98, 97, 78]],
      ['slow', [2, 4, 4, 5, 24, 4, 2, 2, 2, 1, 2, 12]],
      ['no', [1, 2, 1, 2, 62, 4, 1, 1, 1, 1, 1, 10]],
    ]),
  },
  {
    id: 'capacity',
    // Two readings of the meter, days apart: a full run of the bed lies between them.
    ...{ place: 'site', minutes: 60, days: 3, reliability: 0.93, cautions: [], source: 'practice' },
    answers: answersFrom([
      ['full', [3, 20, 5, 6, 8, 70, 45, 72, 22, 92, 88, 45]],
      ['down', [27, 35, 40, 40, 27, 20, 40, 20, 48, 7, 9, 35]],
      ['low', [70, 45, 55, 54, 65, 10, 15, 8, 30, 1, 3, 20]],
    ]),
  },
  {
    id: 'bead-feel',
    ...{ place: 'opened', minutes: 45, reliability: 0.95, source: 'practice' },
    cautions: [
      { kind: 'pressure', says: 'bypass-first' },
      { kind: 'electricity', says: 'unplug-last' },
      { kind: 'slip', says: 'beads-roll' },
    ],
    answers: answersFrom([
      ['firm', [8, 70, 72, 24, 88, 88, 88, 86, 78, 93, 88, 88]],
      ['some-soft', [32, 18, 18, 14, 9, 9, 9, 10, 16, 6, 9, 9]],
      ['mushy', [58, 9, 4, 4, 2, 2, 2, 3, 4, 1, 2, 2]],
      ['rusty', [2, 3, 6, 58, 1, 1, 1, 1, 2, 0, 1, 1]],
    ]),
  },
]
