import type { TwinTank } from '@almanac/records/arrangement'
import type { BedFacts, BedWater } from '@almanac/records/bed-facts'
import { knownResinKind } from '@almanac/records/resin-kind'
import type { FirmFigures } from '../firm/firm-figures.ts'
import { cutLengthIn } from '../kit/cut-tube.ts'
import type { RebedKitInput } from '../kit/kit-types.ts'
import type { Speaking } from '../kit/speaking.ts'
import type { ProcedureContext } from '../procedure/procedure-types.ts'

/** What of a bed's record goes into anything. */
export type KitFacts = Omit<BedFacts, 'bedId' | 'sizeAsWritten'>

/** Whose rebed it is: the firm's own tables, and how its people read amounts. */
export type RebedFirm = Speaking & { figures: FirmFigures }

/**
 * A bed's record as the kit takes it: the one place where it is decided what of the record counts. Every screen, paper, reservation and total asks here.
 *
 * The tube's length: the recorded length of the tube that is in the tank, where such a tube could stand in it; else worked out from the tank and marked as
 * an estimate (tanks/distributor-tube.ts). A recorded length outranks the sum, because that tube sealed in its valve: one cut too long cracks the valve, one
 * too short lets beads through. The tube's diameter: as recorded, else by the valve's card, else as usual for the tank (kit/choose-tube.ts). The bags follow
 * from the record and the firm's own bag sizes alone, never from the shelf of the day, so that what was booked is what is loaded.
 */
export function kitInputOf(bed: KitFacts, { figures, display, words }: RebedFirm): RebedKitInput {
  return {
    diameterIn: bed.diameterIn,
    heightIn: bed.heightIn,
    nominalGrains: bed.nominalGrains,
    resinVolumeFt3: bed.volumeFt3,
    resinKind: knownResinKind(bed.resinKind),
    gravelLb: bed.gravelLb,
    tubeOutsideDiameterIn: bed.tubeOdIn,
    oldTubeLengthIn: bed.tubeCutIn,
    valve: figures.valves.find((card) => card.id === bed.valveCardId) ?? null,
    figures,
    display,
    words,
  }
}

/** What the steps of a visit depend on; the tube is cut as the kit says. `emptied`: an earlier visit took the bed out. */
export function procedureContextOf(
  bed: BedFacts | null,
  water: BedWater,
  firm: RebedFirm,
  { twin, emptied = false }: { twin: TwinTank | null; emptied?: boolean },
): ProcedureContext {
  const { figures, display } = firm
  const site = { twin, emptied, waterSource: water.source, ironMgL: water.ironMgL, figures, display }
  if (!bed) return site
  return {
    ...site,
    diameterIn: bed.diameterIn,
    heightIn: bed.heightIn,
    nominalGrains: bed.nominalGrains,
    resinVolumeFt3: bed.volumeFt3,
    resinKind: knownResinKind(bed.resinKind),
    gravelLb: bed.gravelLb,
    newTubeLengthIn: cutLengthIn(kitInputOf(bed, firm)),
  }
}
