import { FROM_MEMORY } from '@almanac/units/sourced'
import { TUBE_OUTSIDE_DIAMETERS_IN } from '../tanks/distributor-tube.ts'
import type { ValveCard } from './firm-figures.ts'

/** Backwash flows that drain controls of house valves come in, gpm; from memory, unverified. */
const HOUSE_BACKWASH_GPM = [1.2, 1.5, 2, 2.4, 3, 3.5, 4, 5, 7] as const
/** Refill flow of a house valve, gpm; from memory, unverified. */
const HOUSE_REFILL_GPM = 0.5

/** What the usual cards say of tube and seals; other languages follow them. */
export const FLUSH = 'Usually flush with the rim of the opening; the old tube decides.'
export const MEASURE_FIRST = 'Below or above the rim by the maker’s number: measure the old tube before it comes out.'
export const USUAL_SEALS = 'Neck O-ring and tube O-ring; see the valve.'

const HOUSE = {
  tubeOdIn: TUBE_OUTSIDE_DIAMETERS_IN.domestic,
  backwashGpm: HOUSE_BACKWASH_GPM,
  refillGpm: HOUSE_REFILL_GPM,
  tubeRule: FLUSH,
  seals: USUAL_SEALS,
  source: FROM_MEMORY,
} as const

/** Sorts of valve met in houses and shops. A firm adds the ones it knows; nothing here names a maker. */
export const USUAL_VALVES: readonly ValveCard[] = [
  { id: 'usual-meter', label: 'Metered house valve', labelWords: ['meter', 'gallons', 'display'], control: 'meter', ...HOUSE },
  { id: 'usual-timer', label: 'Timer house valve', labelWords: ['timer', 'clock', 'dial', 'days'], control: 'timer', ...HOUSE },
  {
    id: 'usual-small-tube',
    label: 'Cabinet softener with a narrow tube',
    labelWords: ['cabinet', 'one piece', 'small'],
    control: 'meter',
    ...HOUSE,
    tubeOdIn: TUBE_OUTSIDE_DIAMETERS_IN.small,
    tubeRule: MEASURE_FIRST,
  },
  {
    id: 'usual-commercial',
    label: 'Commercial valve, 1½ in tube',
    labelWords: ['commercial', 'flange', '4 in opening'],
    control: 'meter',
    ...HOUSE,
    tubeOdIn: TUBE_OUTSIDE_DIAMETERS_IN.commercial,
    backwashGpm: [5, 7, 10, 12, 15, 20, 25],
    refillGpm: 2,
  },
]
