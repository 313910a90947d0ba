import { formatTankSize } from '@almanac/units/format'
import { CLUE_LIMITS, type ClueProblem } from './check-clues.ts'
import { expectedReading, missOf } from './clue-likelihood.ts'
import type { ClueId, SizeHypothesis, TankClues } from './clue-types.ts'
import { type ClueSpeaking, clueValue } from './clue-words.ts'

/** A clue further off than this many standard deviations is more likely a slip than a reading. */
export const ODD_FROM_SD = 3.5

/** The clues that do not go with the likeliest size, each with what it should have been. */
export function oddClues(clues: TankClues, size: SizeHypothesis | null, speaking: ClueSpeaking): ClueProblem[] {
  if (size === null) return []
  return (Object.keys(CLUE_LIMITS) as Exclude<ClueId, 'jacket'>[]).flatMap((clue) => {
    const value = clues[clue]
    if (value == null) return []
    const expected = expectedReading(clue, size)
    if (missOf(value, expected) <= ODD_FROM_SD) return []
    const words = speaking.tank
    const named = {
      clue: words(`clue/${clue}`),
      value: clueValue(clue, value, speaking),
      tank: formatTankSize(size.diameterIn, size.heightIn, speaking.display),
    }
    const [from, to] = [clueValue(clue, expected.low, speaking), clueValue(clue, expected.high, speaking)]
    return [{ clue, sentence: from === to ? words('odd', { ...named, wanted: from }) : words('oddRange', { ...named, from, to }) }]
  })
}
