import { caution, choice, confirm, filled, number, type StepRule } from './step-rules.ts'

/** From first water to handing the softener over. */
export const STEPS_START: readonly StepRule[] = [
  {
    id: 'start-in-backwash',
    minutes: 5,
    cautions: [
      caution('water', 'fine-mesh-flow', ({ resinKind }) => resinKind === 'fine-mesh'),
      caution('pressure', 'air-hammer'),
      caution('electricity', 'dry-hands', ({ valveNeedsPower }) => valveNeedsPower !== false),
      caution('water', 'drain-flow'),
      caution('water', 'septic', ({ drain }) => drain === 'septic'),
    ],
    asks: [confirm('strainer-on')],
  },
  {
    id: 'run-clear',
    // The usual backwash of a house's valve, twice as long for a large tank; common practice, no source.
    waitMinutes: ({ commercial }) => (commercial ? 20 : 10),
    minutes: ({ commercial }) => (commercial ? 20 : 8),
    asks: [choice('drain-clear', ['clear', 'fines', 'beads'])],
  },
  {
    id: 'leaks-first',
    minutes: 2,
    cautions: [caution('pressure', 'tighten-pressure')],
    asks: [confirm('no-leaks')],
  },
  {
    id: 'test-outlet',
    // As its text says.
    waitMinutes: 2,
    minutes: 5,
    cautions: [caution('water', 'taste')],
    asks: [number('hardness-outlet-after-gpg', 'hardness', true)],
  },
  {
    id: 'sanitise',
    dose: 'bleach',
    minutes: 2,
    cautions: [caution('chemical', 'bleach-cleaner'), caution('chemical', 'eyes-gloves')],
    asks: [confirm('sanitised', { required: false })],
  },
  {
    id: 'check-brine',
    minutes: 6,
    asks: [
      choice('brine-draw', ['draws', 'slow', 'none']),
      choice('brine-refill', ['right', 'low', 'high', 'float']),
      confirm('overflow-drained', { required: false }),
    ],
  },
  {
    id: 'full-regeneration',
    minutes: ({ commercial }) => (commercial ? 60 : 15),
    cautions: [caution('water', 'no-hot-yet')],
    asks: [confirm('regeneration-started'), choice('brining-shown', ['conductivity', 'chloride', 'not-yet'])],
  },
  {
    id: 'hand-over',
    minutes: 6,
    cautions: [
      caution('refer', 'sodium'),
      caution('water', 'twin-changeover', ({ twin }) => twin?.arrangement === 'twin-alternating'),
      caution('water', 'twin-even', ({ twin }) => twin != null && twin.arrangement !== 'twin-alternating'),
    ],
    asks: [confirm('in-service'), confirm('settings-entered')],
  },
  {
    id: 'clear-away',
    title: ({ emptied }) => (emptied ? 'clear-away-empty' : 'clear-away'),
    text: ({ emptied, waterSource }) =>
      emptied ? 'clear-away/text-empty' : waterSource === 'private-well' ? 'clear-away/text-well' : 'clear-away/text',
    minutes: ({ commercial, emptied }) => (commercial && !emptied ? 30 : 5),
    cautions: [caution('lifting', 'pails', filled)],
    asks: [number('spent-containers', 'pails', false, filled), confirm('floor-clean', { required: false })],
  },
]
