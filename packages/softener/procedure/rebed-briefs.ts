import type { ProcedureStepId } from '@almanac/records/procedure-step'
import { procedureFacts } from './procedure-facts.ts'
import type { ProcedureContext } from './procedure-types.ts'
import type { Facts } from './step-rules.ts'

type Brief = string | ((facts: Facts) => string)

/** Each step of a rebed in a line or two, for paper: nothing of its order or its conditions is lost, only the explaining. Common practice, no source. */
const BRIEFS: Readonly<Partial<Record<ProcedureStepId, Brief>>> = {
  'stop-and-refer': 'Look round before unloading.',
  'check-water': 'Compare with the last test.',
  'record-as-found': 'Sample at the valve outlet. Photograph it all. Note the settings.',
  'close-hot-side': 'Close the cold inlet of the water heater.',
  'prove-bypass': ({ hasBypass }) =>
    hasBypass === false
      ? 'No bypass: close the stop valves on both sides, or the main. An open cold tap must stay dry.'
      : 'With backwash or a tap on its side open, the flow must die away.',
  'pressure-off': ({ valveNeedsPower }) =>
    valveNeedsPower === false
      ? 'To backwash by hand, until the drain stops: pressure is zero.'
      : 'To backwash while it has power, until the drain stops: pressure is zero.',
  'power-off': 'Only now unplug the valve.',
  'bonding-jumper': ({ metalPipe }) =>
    metalPipe === true ? 'Across the softener, before pipe is opened.' : 'Metal pipe: across the softener, before it is opened.',
  'remove-valve': 'Drain and brine lines off. Unscrew by hand, lift straight off the tube.',
  'drain-tank': 'Siphon or vacuum the water out with the opening kept free.',
  'take-out-media': ({ commercial }) =>
    commercial
      ? 'Vacuum or flush it out where it stands. Tube out once loose. Collect every bead.'
      : 'Two people tip it over a sheet, or vacuum it. Tube out once loose.',
  'inspect-tank': 'Look with a lamp: inside, neck thread, dimple, foot.',
  'cut-tube': ({ cutLength }) =>
    `As the old tube, basket to basket, if it fitted and baskets match (${cutLength}); else flush with the rim or by the valve’s offset. Square, deburred.`,
  'cap-tube': 'In the dimple, upright, in the middle. Cap on: one goes in.',
  'water-first': 'A third full, before anything is poured in.',
  'pour-gravel': ({ gravelText, gravel }) => `${gravel === null ? 'If wanted, ' : ''}${gravelText}, coarse before fine. Level it.`,
  'pour-resin': ({ resinText }) => `${resinText} by the funnel, to about two thirds. Hold the tube down.`,
  'cap-out': 'Rinse beads off the neck. Cap in the hand: one in, one out.',
  'seat-valve':
    'New seals, silicone grease only. Fill with water. To the seat by hand, then at most ¼ to ½ turn, or by the maker’s figure.',
  reconnect: 'Water, brine, drain. Air gap: twice the drain’s bore, at least 1 in (25 mm). Aerators off.',
  'start-in-backwash':
    'Strainer on the drain. Power on, manual regeneration, stop in backwash. Water little by little: air leaves by the drain.',
  'run-clear': 'Some minutes, until clear and without beads.',
  'leaks-first': 'Neck, bypass, brine line, every joint that was opened.',
  sanitise: 'Dose of plain bleach into the brine well.',
  'check-brine': 'Brine: the level in the well falls. Refill: the float stops it.',
  'full-regeneration': 'Stay through it, or say when it ends. Clean up meanwhile.',
  'test-outlet': ({ outletLimit }) =>
    `Not at a hot tap. Below ${outletLimit} little bypasses; brining is shown only by conductivity or a chloride strip.`,
  'hand-over': 'Jumper off, hot side open, aerators on after a flush, settings entered, in service. Show the bypass.',
  'clear-away': ({ waterSource }) =>
    waterSource === 'private-well'
      ? 'Pails closed. From a well it may hold metals or radium: local rule.'
      : 'Pails closed. Where spent resin may go is a local rule.',
}

/** The brief of each step by its id, for this tank and site. Every step of `rebedProcedure` has one. */
export function rebedBriefs(context: ProcedureContext): Record<string, string> {
  const { facts } = procedureFacts(context)
  return Object.fromEntries(
    Object.entries(BRIEFS).map(([id, brief]) => {
      const text = typeof brief === 'string' ? brief : brief(facts)
      return [id, text.charAt(0).toUpperCase() + text.slice(1)]
    }),
  )
}
