import type { AmountDisplay } from '@almanac/units/display'
import { formatLengthIn, formatVolumeFt3 } from '@almanac/units/format'
import { showWhole } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'
import type { ClueId } from './clue-types.ts'

/** How clues are said: amounts in the company’s units, sentences in the reader's language. */
export type ClueSpeaking = { display: AmountDisplay; tank: Words<'whichTank'> }

/** What a clue gives, in words. */
export function clueValue(clue: Exclude<ClueId, 'jacket'>, value: number, { display, tank }: ClueSpeaking): string {
  if (!Number.isFinite(value)) return tank('noNumber')
  if (clue === 'nominalGrains') return tank('grains', { count: showWhole(value, display) })
  return clue === 'resinFt3' ? formatVolumeFt3(value, display) : formatLengthIn(value, display)
}
