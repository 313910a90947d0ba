import { COMMON_PRACTICE, FROM_MEMORY } from '@almanac/units/sourced'
import type { Check } from './check-types.ts'
import { answersFrom } from './likelihood-rows.ts'

// Columns: worn bed, distributor, channelling, iron, injector or brine, meter or timer, bypass, undersized, water changed, no fault.

/** What is seen or measured at the softener. Chances are from memory, unverified, from how each fault works. */
export const SITE_CHECKS: readonly Check[] = [
  {
    id: 'pressure',
    title: 'Is pressure lost, and where?',
    how: 'Open two taps with the softener in service, then in bypass. Weak in both is the house; weak in service only is the bed.',
    ...{ place: 'telephone', minutes: 5, reliability: 0.88, source: COMMON_PRACTICE },
    cautions: [{ kind: 'pressure', text: 'Turn the bypass slowly. Above 80 psi (5.5 bar) the house needs a pressure regulator.' }],
    reason: 'Soft and broken beads and iron clog the bed; what remains weak in bypass is not the softener.',
    answers: answersFrom([
      ['none', 'No pressure lost', [52, 60, 60, 58, 92, 93, 93, 76, 88, 84]],
      ['service', 'Only in service', [43, 34, 35, 37, 3, 3, 2, 18, 6, 3]],
      ['both', 'In bypass too', [5, 6, 5, 5, 5, 4, 5, 6, 6, 13]],
    ]),
  },
  {
    id: 'iron',
    title: 'Are there rust stains?',
    how: 'Brown stains in basin or toilet, brown water from the drain in backwash, brown mud in the brine tank.',
    ...{ place: 'telephone', minutes: 3, reliability: 0.9, source: COMMON_PRACTICE },
    cautions: [
      { kind: 'chemical', text: 'Never mix bleach with iron cleaner: it makes toxic gas. Ask what was poured into the brine tank before.' },
    ],
    reason: 'Iron that gets past the bed stains; a fouled bed gives brown water when it is backwashed.',
    answers: answersFrom([
      ['none', 'None', [86, 90, 80, 12, 86, 82, 78, 86, 72, 93]],
      ['stains', 'Stains', [14, 10, 20, 88, 14, 18, 22, 14, 28, 7]],
    ]),
  },
  {
    id: 'outlet',
    title: 'Hardness at the valve outlet and at a cold tap',
    how: 'Run the water two minutes. Test at the valve’s own outlet first, then at a cold tap, with the same kit. Not at a hot tap.',
    ...{ place: 'site', minutes: 10, reliability: 0.95, cautions: [], source: COMMON_PRACTICE },
    reason: 'Soft at the outlet but hard at the tap means water goes around: a bypass, or a tap on the raw side.',
    answers: answersFrom([
      ['both-soft', 'Both soft', [13, 30, 10, 14, 5, 8, 2, 30, 22, 90]],
      ['tap-hard', 'Outlet soft, tap hard', [2, 2, 2, 2, 2, 2, 88, 3, 2, 4]],
      ['both-hard', 'Both hard', [85, 68, 88, 84, 93, 90, 10, 67, 76, 6]],
    ]),
  },
  {
    id: 'draws-brine',
    title: 'Does it draw brine?',
    how: 'Start a regeneration by hand and go to brine: the level in the well falls within ten minutes.',
    ...{ place: 'site', minutes: 20, reliability: 0.96, source: COMMON_PRACTICE },
    cautions: [
      { kind: 'water', text: 'Water runs to the drain: see that standpipe or sump take it before you start.' },
      { kind: 'electricity', text: 'Leave the valve’s cover on while it is plugged in.' },
    ],
    reason: 'If the level doesn’t move, it’s the injector, a line sucking air, or a blocked drain.',
    answers: answersFrom([
      ['yes', 'It falls', [97, 94, 95, 93, 14, 92, 97, 97, 97, 98]],
      ['slow', 'Slowly', [2, 4, 4, 5, 24, 4, 2, 2, 2, 1]],
      ['no', 'It doesn’t move', [1, 2, 1, 2, 62, 4, 1, 1, 1, 1]],
    ]),
  },
  {
    id: 'capacity',
    title: 'How much water does it soften after a full regeneration?',
    how: 'Note the meter after a full regeneration and again when the outlet turns hard; divide by what it should be.',
    ...{ place: 'site', minutes: 30, reliability: 0.93, cautions: [], source: FROM_MEMORY },
    reason:
      'What a good regeneration gives back shows the bed’s own strength; below three quarters, and not fixed by cleaning, is a worn bed (UFC 3-240-13FN).',
    answers: answersFrom([
      ['full', 'All of it', [3, 20, 5, 6, 8, 70, 45, 72, 22, 92]],
      ['down', 'Some is missing', [27, 35, 40, 40, 27, 20, 40, 20, 48, 7]],
      ['low', 'A quarter or more is missing', [70, 45, 55, 54, 65, 10, 15, 8, 30, 1]],
    ]),
  },
  {
    id: 'bead-feel',
    title: 'How do the beads feel?',
    how: 'A spoonful from the top of the bed, rubbed between two fingers.',
    ...{ place: 'opened', minutes: 45, reliability: 0.95, source: COMMON_PRACTICE },
    cautions: [
      { kind: 'pressure', text: 'Bypass, proven to hold; then backwash until the drain stops. Nothing is opened while there is pressure.' },
      { kind: 'electricity', text: 'Unplug only after the pressure is gone: without power the valve cannot let it out.' },
      { kind: 'slip', text: 'Wet beads roll underfoot: a sheet on the floor, and sweep before you walk.' },
    ],
    reason: 'Oxidants cut the crosslinks: beads swell, soften and break. Firm beads are good beads, whatever their color.',
    answers: answersFrom([
      ['firm', 'Firm and whole', [8, 70, 72, 24, 88, 88, 88, 86, 78, 93]],
      ['some-soft', 'Some soft', [32, 18, 18, 14, 9, 9, 9, 10, 16, 6]],
      ['mushy', 'Mushy or broken', [58, 9, 4, 4, 2, 2, 2, 3, 4, 1]],
      ['rusty', 'Rust-colored, firm', [2, 3, 6, 58, 1, 1, 1, 1, 2, 0]],
    ]),
  },
]
