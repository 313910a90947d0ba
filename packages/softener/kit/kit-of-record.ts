import type { Result } from '@almanac/units/result'
import type { UnitSystem } from '@almanac/units/unit-system'
import type { FirmFigures } from '../firm/firm-figures.ts'
import type { ResinKindId } from '../resin/resin-kinds.ts'
import type { RebedKit } from './kit-types.ts'
import { rebedKit } from './rebed-kit.ts'

/** A bed and its tank as a firm's records have them: lengths in inches, volume in ft³, weight in lb, null where not known. */
export type RecordedBed = {
  resinKind: string
  volumeFt3: number | null
  gravelLb: number | null
  diameterIn: number | null
  heightIn: number | null
  nominalGrains: number | null
}

const RECORDED: Readonly<Record<string, ResinKindId>> = { 'gel-8': 'gel-8', 'gel-10': 'gel-10', 'fine-mesh': 'fine-8', 'fine-8': 'fine-8' }

/** The resin a record's word stands for; null for "unknown" and any other word. */
export function recordedResinKind(word: string | null): ResinKindId | null {
  return RECORDED[word ?? ''] ?? null
}

/** The kit of a rebed from what is on record; refuses where the tank's size is not known. */
export function kitOfRecord(bed: RecordedBed, firm: { figures: FirmFigures; unitSystem: UnitSystem }): Result<RebedKit> {
  const { diameterIn, heightIn, nominalGrains, gravelLb } = bed
  const known = { diameterIn, heightIn, nominalGrains, gravelLb, resinVolumeFt3: bed.volumeFt3 }
  return rebedKit({ ...known, resinKind: recordedResinKind(bed.resinKind), ...firm })
}
