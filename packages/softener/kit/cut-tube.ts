import { type TubeLength, tubeLength } from '../tanks/distributor-tube.ts'
import { checkTankSize, tankShell } from '../tanks/tank-geometry.ts'
import type { RebedKitInput } from './kit-types.ts'

/** Offsets beyond this are a slip of entry, in. */
const MOST_OFFSET_IN = 3

type Asked = Pick<RebedKitInput, 'diameterIn' | 'heightIn' | 'oldTubeLengthIn' | 'tubeOffsetIn' | 'words'>

/** How long the new tube is cut: as the old one that fitted, else worked out from the tank with the firm's own offset. */
export function cutTube({ oldTubeLengthIn, tubeOffsetIn, words }: Asked, size: { diameterIn: number; heightIn: number }): TubeLength {
  const tube = tubeLength(tankShell(size.diameterIn, size.heightIn), oldTubeLengthIn, words)
  if (tube.basis === 'old tube' || tubeOffsetIn == null || !(Math.abs(tubeOffsetIn) <= MOST_OFFSET_IN)) return tube
  return { ...tube, lengthIn: tube.lengthIn + tubeOffsetIn }
}

/** The same length alone, in; null where the tank's size is not known or not possible. What only cuts a tube needs no kit. */
export function cutLengthIn(asked: Asked): number | null {
  const { diameterIn, heightIn } = asked
  if (diameterIn === null || heightIn === null || checkTankSize(diameterIn, heightIn, asked.words)) return null
  return cutTube(asked, { diameterIn, heightIn }).lengthIn
}
