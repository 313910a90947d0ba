import type { Check } from './check-types.ts'
import { answersFrom } from './likelihood-rows.ts'

// Columns: worn bed, distributor, channelling, iron, injector or brine, meter or timer, bypass, undersized, water changed, no fault.

/** What is seen or measured at the softener. Chances are from memory, unverified, from how each fault works. */
export const SITE_CHECKS: readonly Check[] = [
  {
    id: 'pressure',
    ...{ place: 'telephone', minutes: 5, reliability: 0.88, source: 'practice' },
    cautions: [{ kind: 'pressure', says: 'turn-slowly' }],
    answers: answersFrom([
      ['none', [52, 60, 60, 58, 92, 93, 93, 76, 88, 84]],
      ['service', [43, 34, 35, 37, 3, 3, 2, 18, 6, 3]],
      ['both', [5, 6, 5, 5, 5, 4, 5, 6, 6, 13]],
    ]),
  },
  {
    id: 'iron',
    ...{ place: 'telephone', minutes: 3, reliability: 0.9, source: 'practice' },
    cautions: [{ kind: 'chemical', says: 'poured-before' }],
    answers: answersFrom([
      ['none', [86, 90, 80, 12, 86, 82, 78, 86, 72, 93]],
      ['stains', [14, 10, 20, 88, 14, 18, 22, 14, 28, 7]],
    ]),
  },
  {
    id: 'outlet',
    ...{ place: 'site', minutes: 10, reliability: 0.95, cautions: [], source: 'practice' },
    answers: answersFrom([
      ['both-soft', [13, 30, 10, 14, 5, 8, 2, 30, 22, 90]],
      ['tap-hard', [2, 2, 2, 2, 2, 2, 88, 3, 2, 4]],
      ['both-hard', [85, 68, 88, 84, 93, 90, 10, 67, 76, 6]],
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
      ['yes', [97, 94, 95, 93, 14, 92, 97, 97, 97, 98]],
      ['slow', [2, 4, 4, 5, 24, 4, 2, 2, 2, 1]],
      ['no', [1, 2, 1, 2, 62, 4, 1, 1, 1, 1]],
    ]),
  },
  {
    id: 'capacity',
    ...{ place: 'site', minutes: 30, reliability: 0.93, cautions: [], source: 'memory' },
    answers: answersFrom([
      ['full', [3, 20, 5, 6, 8, 70, 45, 72, 22, 92]],
      ['down', [27, 35, 40, 40, 27, 20, 40, 20, 48, 7]],
      ['low', [70, 45, 55, 54, 65, 10, 15, 8, 30, 1]],
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
      ['firm', [8, 70, 72, 24, 88, 88, 88, 86, 78, 93]],
      ['some-soft', [32, 18, 18, 14, 9, 9, 9, 10, 16, 6]],
      ['mushy', [58, 9, 4, 4, 2, 2, 2, 3, 4, 1]],
      ['rusty', [2, 3, 6, 58, 1, 1, 1, 1, 2, 0]],
    ]),
  },
]
