import { chooseTube } from '../kit/choose-tube.ts'
import type { SiteInput } from '../site/site-input.ts'
import { type KitFacts, kitInputOf, type RebedFirm } from './rebed-of-record.ts'

/** The tube's diameter as the kit brings it, where record or valve decide it; null where nothing does: the usual tube is then taken, and said to be assumed. */
export function decidedTubeOdIn(bed: KitFacts, firm: RebedFirm): number | null {
  const { valve, tubeOutsideDiameterIn: recordedOdIn, diameterIn } = kitInputOf(bed, firm)
  const tube = diameterIn === null ? null : chooseTube({ recordedOdIn, valve, diameterIn, ...firm })
  return tube === null || tube.basis === 'usual' ? null : tube.outsideDiameterIn
}

/** A bed's record as a softener's setting takes it: of tank, filling and tube what the kit takes. */
export function siteBedOf(bed: KitFacts, firm: RebedFirm) {
  const { diameterIn, heightIn, nominalGrains, resinVolumeFt3, resinKind, gravelLb, oldTubeLengthIn } = kitInputOf(bed, firm)
  const tank = { diameterIn, heightIn, nominalGrains: nominalGrains ?? null, resinFt3: resinVolumeFt3 ?? null, gravelLb: gravelLb ?? null }
  const tube = { oldTubeLengthIn: oldTubeLengthIn ?? null, tubeOutsideDiameterIn: decidedTubeOdIn(bed, firm) }
  return { ...tank, ...tube, resinKind: resinKind ?? null, backwashGpm: bed.backwashGpm } satisfies Partial<SiteInput>
}
