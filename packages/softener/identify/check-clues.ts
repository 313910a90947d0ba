import type { ClueId, TankClues } from './clue-types.ts'
import { type ClueSpeaking, clueValue } from './clue-words.ts'

/** What can stand for each clue, inches, grains and ft³; outside it is a slip, told and left out. */
export const CLUE_LIMITS: Readonly<Record<Exclude<ClueId, 'jacket'>, { least: number; most: number }>> = {
  diameterIn: { least: 4, most: 72 },
  circumferenceIn: { least: 12, most: 230 },
  heightIn: { least: 10, most: 144 },
  heightWithValveIn: { least: 12, most: 160 },
  writtenDiameterIn: { least: 4, most: 72 },
  writtenHeightIn: { least: 10, most: 144 },
  nominalGrains: { least: 4_000, most: 2_000_000 },
  resinFt3: { least: 0.1, most: 100 },
  bedDepthIn: { least: 4, most: 100 },
  openingIn: { least: 1, most: 8 },
}

export type ClueProblem = { clue: ClueId; sentence: string }
export type CheckedClues = { clues: TankClues; used: ClueId[]; problems: ClueProblem[] }

/** Keeps what can be; each clue that cannot is named with a sentence and left out. */
export function checkClues(given: TankClues, speaking: ClueSpeaking): CheckedClues {
  const { tank } = speaking
  const clues: TankClues = {}
  const problems: ClueProblem[] = []
  for (const clue of Object.keys(CLUE_LIMITS) as (keyof typeof CLUE_LIMITS)[]) {
    const value = given[clue]
    if (value === null || value === undefined) continue
    const { least, most } = CLUE_LIMITS[clue]
    if (value >= least && value <= most) clues[clue] = value
    else {
      const shown = (one: number) => clueValue(clue, one, speaking)
      const sentence = tank('leftOut', { clue: tank(`clue/${clue}`), value: shown(value), least: shown(least), most: shown(most) })
      problems.push({ clue, sentence })
    }
  }
  const { heightIn, heightWithValveIn } = clues
  if (heightIn != null && heightWithValveIn != null && heightWithValveIn < heightIn) {
    delete clues.heightWithValveIn
    problems.push({ clue: 'heightWithValveIn', sentence: tank('topBelowRim') })
  }
  if (typeof given.jacket === 'boolean') clues.jacket = given.jacket
  return { clues, used: Object.keys(clues) as ClueId[], problems }
}
