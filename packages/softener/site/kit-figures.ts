import { type Refusal, refuse } from '@almanac/units/result'
import type { FirmFigures } from '../firm/firm-figures.ts'
import { type BagPlan, CUBIC_FOOT_BAGS, planBags } from '../kit/bag-plan.ts'
import { decideGravel } from '../kit/decide-gravel.ts'
import { jobWeight } from '../kit/job-weight.ts'
import { PAIL_FILL_FT3, sanitiserDoseFlOz, spentResinFt3, USUAL_BLEACH_PERCENT } from '../kit/kit-supply-lines.ts'
import type { Speaking } from '../kit/speaking.ts'
import type { ResinKind } from '../resin/resin-kinds.ts'
import { GRAVEL_BULK_LB_FT3 } from '../tanks/bed-levels.ts'
import { tubeLength, tubeOutsideDiameter } from '../tanks/distributor-tube.ts'
import type { TankFill } from '../tanks/fill-for-tank.ts'
import type { TankShell } from '../tanks/tank-geometry.ts'
import type { SiteInput } from './site-input.ts'

/** The numbers of a rebed kit without its words: `rebedKit` says the same in sentences, and is the one to show. */
export type KitFigures = {
  bagPlan: BagPlan
  gravelLb: number
  tubeLengthIn: number
  tubeOutsideDiameterIn: number
  sanitiserFlOz: number
  pails: number
  spentResinFt3: number
  loadWeightLb: number
  fullTankLb: number
  heaviestLiftLb: number
  crewSize: number
}

/** What a rebed of one tank takes, in figures. */
export function kitFigures(
  input: SiteInput,
  shell: TankShell,
  fill: TankFill,
  kind: ResinKind,
  figures: FirmFigures,
  speaking: Speaking,
): KitFigures | Refusal {
  const bagPlan = planBags(fill.resinFt3, figures.bagSizes ?? CUBIC_FOOT_BAGS)
  if (bagPlan === null) return refuse(speaking.words('noBags'))
  const gravel = decideGravel({ figures, ...speaking }, fill)
  let heaviestFt3 = 0
  for (const bag of bagPlan.bags) heaviestFt3 = Math.max(heaviestFt3, bag.volumeFt3)
  const weight = jobWeight({
    ...speaking,
    diameterIn: shell.diameterIn,
    heightIn: shell.heightIn,
    resinFt3: fill.resinFt3,
    gravelLb: gravel.presentLb,
    resinKind: kind.id,
    heaviestBagLb: heaviestFt3 * kind.wetWeightLbFt3.value,
    access: input.access,
  })
  if (!weight.ok) return weight
  const spent = spentResinFt3(fill.resinFt3)
  const gravelLb = gravel.newLb < 0.5 ? 0 : gravel.newLb
  return {
    bagPlan,
    gravelLb: gravel.newLb,
    tubeLengthIn: tubeLength(shell, input.oldTubeLengthIn, speaking.words).lengthIn,
    tubeOutsideDiameterIn: tubeOutsideDiameter(input.tubeOutsideDiameterIn, shell.diameterIn).outsideDiameterIn,
    sanitiserFlOz: sanitiserDoseFlOz(fill.resinFt3, USUAL_BLEACH_PERCENT),
    pails: Math.max(1, Math.ceil((spent + gravel.takenOutLb / GRAVEL_BULK_LB_FT3) / PAIL_FILL_FT3 - 1e-9)),
    spentResinFt3: spent,
    loadWeightLb: bagPlan.volumeFt3 * kind.wetWeightLbFt3.value + gravelLb,
    fullTankLb: weight.value.fullTankLb,
    heaviestLiftLb: weight.value.heaviestLiftLb,
    crewSize: weight.value.crewSize,
  }
}
