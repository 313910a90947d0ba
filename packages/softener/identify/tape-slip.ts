import { formatTankSize } from '@almanac/units/format'
import { convertLength } from '@almanac/units/length'
import { findTankSize, type TankSize } from '../tanks/tank-sizes.ts'
import type { ClueProblem } from './check-clues.ts'
import type { TankClues } from './clue-types.ts'
import type { ClueSpeaking } from './clue-words.ts'

/**
 * A tape read wrongly in a way that looks sound: around and height swapped, or centimetres typed as inches. Suspected where what was typed is no listed size
 * but would be one read the other way; then nothing is ordered by it. Null where there is nothing to suspect. Common practice, no source.
 */
export function tapeSlip(clues: TankClues, tanks: readonly TankSize[], { tank, display }: ClueSpeaking): ClueProblem | null {
  const { circumferenceIn, diameterIn, heightIn } = clues
  const acrossIn = circumferenceIn == null ? diameterIn : circumferenceIn / Math.PI
  if (acrossIn == null || heightIn == null || findTankSize(acrossIn, heightIn, tanks)) return null
  const given = formatTankSize(Math.round(acrossIn * 2) / 2, Math.round(heightIn), display)
  const said = (key: 'swapped' | 'centimetres', found: TankSize | null): ClueProblem | null =>
    found && { clue: 'heightIn', sentence: tank(key, { given, other: formatTankSize(found.diameterIn, found.heightIn, display) }) }
  const across = circumferenceIn == null ? heightIn : heightIn / Math.PI
  return (
    said('swapped', findTankSize(across, circumferenceIn ?? acrossIn, tanks)) ??
    said('centimetres', findTankSize(inches(acrossIn), inches(heightIn), tanks))
  )
}

/** The inches of a number of centimetres. */
const inches = (cm: number): number => convertLength(cm, 'cm', 'in')
