import { type NumberDisplay, quoteNumber, showNumber, withUnit } from '@almanac/units/format-number'
import type { ClueId, TankClues } from './clue-types.ts'

/** What can stand for each clue, inches, grains and ft³; outside it is a slip, told and left out. */
export const CLUE_LIMITS: Readonly<Record<Exclude<ClueId, 'jacket'>, { least: number; most: number; name: string; unit: string }>> = {
  diameterIn: { least: 4, most: 72, name: 'diameter', unit: 'in' },
  circumferenceIn: { least: 12, most: 230, name: 'circumference', unit: 'in' },
  heightIn: { least: 10, most: 144, name: 'height to the rim', unit: 'in' },
  heightWithValveIn: { least: 12, most: 160, name: 'height to the top of the valve', unit: 'in' },
  writtenDiameterIn: { least: 4, most: 72, name: 'written diameter', unit: 'in' },
  writtenHeightIn: { least: 10, most: 144, name: 'written height', unit: 'in' },
  nominalGrains: { least: 4_000, most: 2_000_000, name: 'rating', unit: 'grains' },
  resinFt3: { least: 0.1, most: 100, name: 'resin volume', unit: 'ft³' },
  bedDepthIn: { least: 4, most: 100, name: 'bed depth', unit: 'in' },
  openingIn: { least: 1, most: 8, name: 'opening', unit: 'in' },
}

export type ClueProblem = { clue: ClueId; sentence: string }
export type CheckedClues = { clues: TankClues; used: ClueId[]; problems: ClueProblem[] }

/** Keeps what can be; each clue that cannot is named with a sentence and left out. */
export function checkClues(given: TankClues, display: NumberDisplay): CheckedClues {
  const clues: TankClues = {}
  const problems: ClueProblem[] = []
  for (const clue of Object.keys(CLUE_LIMITS) as (keyof typeof CLUE_LIMITS)[]) {
    const value = given[clue]
    if (value === null || value === undefined) continue
    const { least, most, name, unit } = CLUE_LIMITS[clue]
    if (value >= least && value <= most) clues[clue] = value
    else {
      const read = Number.isFinite(value) ? `of ${quoteNumber(value)} ${unit}` : `given as ${quoteNumber(value)}`
      problems.push({
        clue,
        sentence: `A ${name} ${read} is left out: it must be from ${showNumber(least, 1, display)} to ${withUnit(most, 0, unit, display)}. Measure again.`,
      })
    }
  }
  const { heightIn, heightWithValveIn } = clues
  if (heightIn != null && heightWithValveIn != null && heightWithValveIn < heightIn) {
    delete clues.heightWithValveIn
    const sentence = 'The top of the valve cannot be lower than the rim of the tank: the height with the valve is left out. Measure again.'
    problems.push({ clue: 'heightWithValveIn', sentence })
  }
  if (typeof given.jacket === 'boolean') clues.jacket = given.jacket
  return { clues, used: Object.keys(clues) as ClueId[], problems }
}
