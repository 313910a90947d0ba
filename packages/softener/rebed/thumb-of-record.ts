import type { BedFacts } from '@almanac/records/bed-facts'
import { knownResinKind } from '@almanac/records/resin-kind'
import { drawBedThumb } from '../drawing/bed-thumb.ts'
import type { RebedFirm } from './rebed-of-record.ts'

/** What the small drawing shows of a bed. */
export type ThumbFacts = Pick<BedFacts, 'diameterIn' | 'heightIn' | 'nominalGrains' | 'volumeFt3' | 'gravelLb' | 'resinKind'>

/** The tank and its bed drawn small, for lists; null where the tank's size is not known. */
export function thumbOf(bed: ThumbFacts, { figures, display, words }: RebedFirm) {
  const { diameterIn, heightIn, nominalGrains, gravelLb, volumeFt3: resinVolumeFt3 } = bed
  const known = { diameterIn, heightIn, nominalGrains, gravelLb, resinVolumeFt3, resinKind: knownResinKind(bed.resinKind) }
  const drawn = drawBedThumb({ ...known, figures, display, words })
  return drawn.ok ? drawn.value : null
}
