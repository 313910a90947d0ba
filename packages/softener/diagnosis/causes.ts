import { COMMON_PRACTICE, FROM_MEMORY } from '@almanac/units/sourced'

export type CauseId =
  | 'worn-bed'
  | 'broken-distributor'
  | 'channelling'
  | 'iron-fouling'
  | 'injector-brine'
  | 'meter-timer'
  | 'bypass'
  | 'undersized'
  | 'water-changed'
  | 'no-fault'

export type ActionId = 'rebed' | 'clean' | 'repair' | 'replace' | 'nothing'

export type Cause = {
  readonly id: CauseId
  readonly label: string
  readonly meaning: string
  /** Share of complaints that it is behind, where nothing is known of the bed. */
  readonly share: number
  readonly cure: ActionId
  readonly cureText: string
  readonly source: string
}

const cause = (
  id: CauseId,
  label: string,
  share: number,
  cure: ActionId,
  meaning: string,
  cureText: string,
  source = FROM_MEMORY,
): Cause => ({
  ...{ id, label, share, cure, meaning, cureText, source },
})

/**
 * What may be behind a complaint. One cause at a time is reckoned with. How often each is met was published nowhere that was found:
 * the shares are from memory and add up to 1; the bed's own share follows from its forecast or its age where one is known.
 */
export const CAUSES: readonly Cause[] = [
  cause(
    'worn-bed',
    'Worn bed',
    0.16,
    'rebed',
    'The resin has lost strength or capacity: soft, swollen or broken beads.',
    'New resin and a new distributor tube.',
    COMMON_PRACTICE,
  ),
  cause(
    'broken-distributor',
    'Broken distributor',
    0.04,
    'rebed',
    'The basket or tube at the bottom is cracked, so beads leave with the water.',
    'New tube and new resin: both come out together.',
    COMMON_PRACTICE,
  ),
  cause(
    'channelling',
    'Channeling',
    0.05,
    'clean',
    'Water takes one path through the bed, because of dirt or too little backwash.',
    'Clean and loosen the bed: a long backwash at the right flow, then set the backwash.',
  ),
  cause(
    'iron-fouling',
    'Iron fouling',
    0.09,
    'clean',
    'Iron coats the beads, so they remove less hardness.',
    'Clean the bed with a cleaner made for iron-fouled resin, and treat the iron ahead of it.',
    COMMON_PRACTICE,
  ),
  cause(
    'injector-brine',
    'Injector or brine fault',
    0.2,
    'repair',
    'Too little brine reaches the bed: injector, brine line, float, air, or a salt bridge.',
    'Clean the injector, its screen, the brine line and float. Break any salt bridge, then regenerate.',
  ),
  cause(
    'meter-timer',
    'Meter or timer fault',
    0.13,
    'repair',
    'The valve doesn’t regenerate when it should: no power, wrong clock, a stuck meter or wrong settings.',
    'Fix power, clock, meter or settings; then regenerate.',
  ),
  cause(
    'bypass',
    'In bypass, or bypass leaking',
    0.1,
    'repair',
    'Hard water goes around the softener.',
    'Put the softener in service; if the bypass leaks, replace its seals.',
    COMMON_PRACTICE,
  ),
  cause(
    'undersized',
    'Undersized',
    0.07,
    'replace',
    'More hardness comes in than the bed can hold between regenerations, or more flow than it can soften.',
    'Reset it first: dose, reserve, days. If that’s not enough, a larger unit.',
  ),
  cause(
    'water-changed',
    'Water changed',
    0.06,
    'repair',
    'The water changed: its hardness, iron or disinfectant is not what the softener was set for.',
    'Test the raw water and set the softener again.',
  ),
  cause(
    'no-fault',
    'No fault of the softener',
    0.1,
    'nothing',
    'The softener works as it should.',
    'Nothing to fix: explain what you found.',
  ),
]
