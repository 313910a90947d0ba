import type { AmountDisplay } from '@almanac/units/display'
import { formatLengthIn, formatTankSize, formatVolumeFt3 } from '@almanac/units/format'
import { withUnit } from '@almanac/units/format-number'
import { CLUE_LIMITS, type ClueProblem } from './check-clues.ts'
import { type Expected, expectedReading, missOf } from './clue-likelihood.ts'
import type { ClueId, SizeHypothesis, TankClues } from './clue-types.ts'

/** A clue further off than this many standard deviations is more likely a slip than a reading. */
export const ODD_FROM_SD = 3.5

/** The clues that do not go with the likeliest size, each with what it should have been. */
export function oddClues(clues: TankClues, size: SizeHypothesis | null, display: AmountDisplay): ClueProblem[] {
  if (size === null) return []
  return (Object.keys(CLUE_LIMITS) as Exclude<ClueId, 'jacket'>[]).flatMap((clue) => {
    const value = clues[clue]
    if (value == null) return []
    const expected = expectedReading(clue, size)
    if (missOf(value, expected) <= ODD_FROM_SD) return []
    const tank = formatTankSize(size.diameterIn, size.heightIn, display)
    const sentence = `The ${CLUE_LIMITS[clue].name} of ${shown(clue, value, display)} does not go with a ${tank} tank, which would give ${wanted(clue, expected, display)}: check it.`
    return [{ clue, sentence }]
  })
}

function shown(clue: ClueId, value: number, display: AmountDisplay): string {
  if (clue === 'nominalGrains') return withUnit(value, 0, 'grains', display)
  return clue === 'resinFt3' ? formatVolumeFt3(value, display) : formatLengthIn(value, display)
}

function wanted(clue: ClueId, { low, high }: Expected, display: AmountDisplay): string {
  const [from, to] = [shown(clue, low, display), shown(clue, high, display)]
  return from === to ? `about ${from}` : `${from} to ${to}`
}
