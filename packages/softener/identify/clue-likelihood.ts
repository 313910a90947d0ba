import { NOMINAL_GRAINS_PER_FT3 } from '@almanac/units/nominal-grains'
import { depthInStraightIn, tankAreaFt2 } from '../tanks/tank-geometry.ts'
import {
  CLUE_ERRORS,
  JACKET_ADDS_IN,
  JACKET_MISTAKEN,
  JACKET_SD_IN,
  VALVE_ABOVE_RIM_IN,
  VALVE_SD_IN,
  WRITTEN_HEIGHT_SD_IN,
} from './clue-errors.ts'
import type { ClueId, SizeHypothesis, TankClues } from './clue-types.ts'

/** What a clue would read on a tank of this size: between `low` and `high`, give or take `sd`. By logarithm where `byRatio`. */
export type Expected = { low: number; high: number; sd: number; byRatio: boolean; slipShare: number; spread: number }
export type MeasuredClue = Exclude<ClueId, 'jacket'>

/** What each clue would read on a tank; the same for every use of it: for weighing what was read and for choosing what to ask. */
export function expectedReading(clue: MeasuredClue, size: SizeHypothesis): Expected {
  const error = CLUE_ERRORS[clue === 'writtenHeightIn' ? 'writtenDiameterIn' : clue]
  const at = (low: number, high: number, sd: number): Expected => ({ ...error, low, high, sd })
  const jacket = size.jacket ? { adds: JACKET_ADDS_IN, sd: JACKET_SD_IN } : { adds: 0, sd: 0 }
  switch (clue) {
    case 'diameterIn': {
      const across = size.diameterIn + jacket.adds
      return at(across, across, Math.hypot(error.sd, jacket.sd))
    }
    case 'circumferenceIn': {
      const round = Math.PI * (size.diameterIn + jacket.adds)
      return at(round, round, Math.hypot(error.sd, Math.PI * jacket.sd))
    }
    case 'heightIn':
      return at(size.heightIn, size.heightIn, error.sd)
    case 'heightWithValveIn': {
      const top = size.heightIn + VALVE_ABOVE_RIM_IN
      return at(top, top, Math.hypot(error.sd, VALVE_SD_IN))
    }
    case 'writtenDiameterIn':
      return at(size.diameterIn, size.diameterIn, error.sd)
    case 'writtenHeightIn':
      return at(size.heightIn, size.heightIn, WRITTEN_HEIGHT_SD_IN)
    case 'nominalGrains':
      return at(size.resinMinFt3 * NOMINAL_GRAINS_PER_FT3, size.resinMaxFt3 * NOMINAL_GRAINS_PER_FT3, error.sd)
    case 'resinFt3':
      return at(size.resinMinFt3, size.resinMaxFt3, error.sd)
    case 'bedDepthIn': {
      const area = tankAreaFt2(size.diameterIn)
      return at(depthInStraightIn(size.resinMinFt3, area), depthInStraightIn(size.resinMaxFt3, area), error.sd)
    }
    case 'openingIn':
      return at(Math.min(...size.openingsIn), Math.max(...size.openingsIn), error.sd)
  }
}

/** How many standard deviations a reading lies outside what the size would give; 0 within. */
export function missOf(value: number, expected: Expected): number {
  const gap = expected.byRatio
    ? Math.max(Math.log(expected.low / value), Math.log(value / expected.high), 0)
    : Math.max(expected.low - value, value - expected.high, 0)
  return gap / expected.sd
}

/**
 * Density of a reading on a tank of this size: flat between the ends and falling as a normal outside, with a share of slips that
 * may read anything. Never 0, so that one slip cannot rule the true size out.
 */
export function readingDensity(value: number, expected: Expected): number {
  const width = expected.byRatio ? Math.log(expected.high / expected.low) : expected.high - expected.low
  const peak = 1 / (width + expected.sd * Math.sqrt(2 * Math.PI))
  const miss = missOf(value, expected)
  return (1 - expected.slipShare) * peak * Math.exp(-0.5 * miss * miss) + expected.slipShare / expected.spread
}

/** Logarithm of the chance of all clues on one size, each clue taken by itself. */
export function clueLogLikelihood(clues: TankClues, size: SizeHypothesis): number {
  let sum = 0
  for (const clue of Object.keys(clues) as ClueId[]) {
    const value = clues[clue]
    if (value === null || value === undefined) continue
    if (typeof value === 'boolean') sum += Math.log(value === size.jacket ? 1 - JACKET_MISTAKEN : JACKET_MISTAKEN)
    else if (clue !== 'jacket') sum += Math.log(readingDensity(value, expectedReading(clue, size)))
  }
  return sum
}
