import type { BedPlanFacts } from '@almanac/contract/bed-choice'
import { knownResinKind } from '@almanac/records/resin-kind'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import type { RebedKitInput } from '@almanac/softener/kit/kit-types'
import type { UnitSystem } from '@almanac/units/unit-system'

/** A bed's record as the kit takes it. */
export function kitInput(plan: BedPlanFacts, figures: FirmFigures, unitSystem: UnitSystem): RebedKitInput {
  const card = figures.valves.find((one) => one.id === plan.valve?.cardId) ?? null
  return {
    diameterIn: plan.tank.diameterIn,
    heightIn: plan.tank.heightIn,
    nominalGrains: plan.tank.nominalGrains,
    resinVolumeFt3: plan.volumeFt3,
    resinKind: knownResinKind(plan.resinKind),
    gravelLb: plan.gravelLb,
    tubeOutsideDiameterIn: plan.valve?.tubeOdIn ?? null,
    oldTubeLengthIn: plan.tubeCutIn,
    valve: card,
    figures,
    unitSystem,
  }
}
