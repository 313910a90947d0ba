import type { ClueError, ClueId } from './clue-types.ts'

/** How much wider a sleeve or jacket makes a tank, in, and how much that varies; from memory, unverified. */
export const JACKET_ADDS_IN = 0.75
export const JACKET_SD_IN = 0.35
/** Share of tanks in houses that wear one; from memory, unverified. */
export const JACKET_SHARE = 0.15
/** How far the top of a valve stands above the tank's rim, in, and how much that varies; from memory, unverified. */
export const VALVE_ABOVE_RIM_IN = 7.5
export const VALVE_SD_IN = 1.75

const error = (sd: number, slipShare: number, spread: number, source: ClueError['source'] = 'practice', byRatio = false): ClueError => ({
  ...{ sd, byRatio, slipShare, spread, source },
})

/**
 * How well each clue tells the size; `error/…` of the words says why. No measurements of such errors were found: they are what careful people get with a tape in a
 * cellar, and the slips are digits swapped, a wrong end of the tape, a label of another unit.
 */
export const CLUE_ERRORS: Readonly<Record<Exclude<ClueId, 'jacket' | 'writtenHeightIn'>, ClueError>> = {
  circumferenceIn: error(0.7, 0.02, 120),
  diameterIn: error(0.45, 0.03, 40),
  heightIn: error(0.75, 0.03, 90),
  heightWithValveIn: error(0.5, 0.03, 90, 'memory'),
  writtenDiameterIn: error(0.3, 0.03, 30),
  nominalGrains: error(0.1, 0.08, 4, 'practice', true),
  resinFt3: error(0.08, 0.04, 4, 'practice', true),
  bedDepthIn: error(2.5, 0.05, 60),
  openingIn: error(0.2, 0.02, 5),
}

/** The height of a written size is as sure as its diameter, in inches of height. */
export const WRITTEN_HEIGHT_SD_IN = 0.6
/** How often somebody is wrong about a jacket. */
export const JACKET_MISTAKEN = 0.05
