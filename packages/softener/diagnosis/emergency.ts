import { COMMON_PRACTICE } from '@almanac/units/sourced'

export type Emergency = { title: string; why: string; sayNow: readonly string[]; onSite: readonly string[]; source: string }

/** Beads at the taps: the same day, before anything else. */
export const BEADS_AT_TAPS: Emergency = {
  title: 'Emergency: send someone today',
  why: 'Beads at the taps mean that the bed is leaving by the distributor. They block screens, valves and the heater, and more come with every draw.',
  sayNow: [
    'Put the softener in bypass: the levers or knobs behind the valve, or the stop valves on both sides.',
    'Use no hot water. Turn the heater off (gas: pilot), then shut its cold inlet.',
    'Switch off the washing machine, the dishwasher and the ice-maker, and close their taps.',
    'Do not unscrew aerators or shower heads yet: they hold the beads back. Sweep up beads on the floor, they roll.',
    'The beads are not poisonous, but do not drink the water until it has run clear.',
    'If the bypass does not hold, close the main stop valve: ask where it is. Someone comes today.',
  ],
  onSite: [
    'Bypass, proven to hold. Heater’s cold inlet closed.',
    'Aerators and shower heads off; flush from the main outwards, cold first, tap by tap, until no bead comes.',
    'Clean screens of taps, washing machine and dishwasher; flush the ice-maker’s line and throw away its ice.',
    'Drain and flush the water heater; ask its maker’s service where it has no drain.',
    'The softener stays in bypass until bed and distributor are renewed.',
  ],
  source: COMMON_PRACTICE,
}
