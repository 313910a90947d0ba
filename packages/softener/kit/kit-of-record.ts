import { knownResinKind } from '@almanac/records/resin-kind'
import type { Result } from '@almanac/units/result'
import type { UnitSystem } from '@almanac/units/unit-system'
import type { FirmFigures } from '../firm/firm-figures.ts'
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

/** The kit of a rebed from what is on record; refuses where the tank's size is not known. */
export function kitOfRecord(bed: RecordedBed, firm: { figures: FirmFigures; unitSystem: UnitSystem }): Result<RebedKit> {
  const { diameterIn, heightIn, nominalGrains, gravelLb } = bed
  const known = { diameterIn, heightIn, nominalGrains, gravelLb, resinVolumeFt3: bed.volumeFt3 }
  return rebedKit({ ...known, resinKind: knownResinKind(bed.resinKind), ...firm })
}
