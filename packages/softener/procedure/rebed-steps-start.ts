import { caution, choice, confirm, number, type StepRule } from './step-rules.ts'

/** From first water to handing the softener over. */
export const STEPS_START: readonly StepRule[] = [
  {
    id: 'start-in-backwash',
    title: 'Start in backwash and let the water in slowly',
    text: 'Put a strainer on the first flow at the drain. Give the valve power, start a manual regeneration and stop it in backwash. Then open the water a little at a time, so that trapped air leaves by the drain.',
    minutes: 5,
    cautions: [
      caution('pressure', 'Opened fast, trapped air drives the bed into the valve and hammers the pipes.'),
      caution('electricity', 'Dry hands and a dry plug before the power goes on.', ({ valveNeedsPower }) => valveNeedsPower !== false),
      caution('water', 'The standpipe, sump or septic system must be able to take the backwash flow: watch it.'),
      caution('water', 'A septic system takes this flow badly: ask where it may go.', ({ drain }) => drain === 'septic'),
    ],
    asks: [confirm('strainer-on', 'Strainer on the drain')],
  },
  {
    id: 'run-clear',
    title: 'Let it run clear',
    text: 'Let the backwash run for some minutes until the drain is clear and carries no beads.',
    minutes: ({ commercial }) => (commercial ? 20 : 8),
    asks: [
      choice('drain-clear', 'Drain', [
        'clear: Clear, no beads',
        'fines: Some fines at first, then clear',
        'beads: Beads keep coming, stopped',
      ]),
    ],
  },
  {
    id: 'leaks-first',
    title: 'Look for leaks under pressure',
    text: 'Look at the neck, the bypass, the brine line and every joint that was opened.',
    minutes: 2,
    cautions: [caution('pressure', 'Never tighten the valve on the tank while it is under pressure.')],
    asks: [confirm('no-leaks', 'No leaks')],
  },
  {
    id: 'sanitise',
    title: 'Sanitise',
    text: 'Put the dose of plain bleach into the brine well.',
    minutes: 2,
    cautions: [
      caution(
        'chemical',
        'Never mix bleach with iron cleaner: it makes toxic gas. No bleach if a cleaner was used or is in the brine tank.',
      ),
      caution('chemical', 'Eye protection and gloves.'),
    ],
    asks: [confirm('sanitised', 'Sanitiser given', false)],
  },
  {
    id: 'check-brine',
    title: 'Check brine draw and refill',
    text: 'Step the valve to brine: the level in the brine well must fall. Step it to refill: the float must stop it at the right height.',
    minutes: 6,
    asks: [
      choice('brine-draw', 'Brine draw', ['draws: It draws', 'slow: Slow', 'none: It does not draw']),
      choice('brine-refill', 'Brine refill', ['right: Right level', 'low: Too low', 'high: Too high']),
    ],
  },
  {
    id: 'full-regeneration',
    title: 'Run a full regeneration',
    text: 'Start a full regeneration. Stay through it where time allows, or say when it ends. Clean up meanwhile.',
    minutes: ({ commercial }) => (commercial ? 60 : 15),
    asks: [confirm('regeneration-started', 'Full regeneration run or running')],
  },
  {
    id: 'test-outlet',
    title: 'Test at the valve outlet',
    text: ({ outletLimit }) =>
      `Test at the valve outlet, not at a hot tap. Below ${outletLimit} shows that little bypasses. It does not show that brining works, since new resin comes in sodium form: for that compare conductivity, or use a chloride strip, during and after the rinse.`,
    minutes: 5,
    cautions: [caution('water', 'Do not judge by taste.')],
    asks: [
      number('hardness-outlet-after-gpg', 'Hardness at the valve outlet', 'hardness', true),
      choice('brining-shown', 'Brining shown by', ['conductivity: Conductivity', 'chloride: Chloride strip', 'not-yet: Not yet shown']),
    ],
  },
  {
    id: 'hand-over',
    title: 'Set, open and hand over',
    text: 'Take the jumper off. Open the hot-water side. Put the aerators back after a flush. Enter the settings. Leave the bypass in service, and show the household how to use it.',
    minutes: 6,
    cautions: [
      caution('refer', 'Softened water carries sodium: people on a sodium diet should ask their doctor, or keep a tap unsoftened.'),
    ],
    asks: [confirm('in-service', 'Bypass in service, hot-water side open'), confirm('settings-entered', 'Settings entered')],
  },
  {
    id: 'clear-away',
    title: 'Take away the old bed',
    text: ({ waterSource }) =>
      waterSource === 'private-well'
        ? 'Close the pails and take the spent resin away. From well water it may hold metals or radium: the local rule decides where it goes.'
        : 'Close the pails and take the spent resin away. Whoever makes the waste decides whether it is hazardous: follow the local rule.',
    minutes: ({ commercial }) => (commercial ? 30 : 5),
    cautions: [caution('lifting', 'Carry pails one at a time, with a second person on stairs.')],
    asks: [number('spent-containers', 'Pails taken away', 'pails'), confirm('floor-clean', 'Floor clean, no beads left', false)],
  },
]
