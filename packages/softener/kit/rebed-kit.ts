import type { AmountDisplay } from '@almanac/units/display'
import { withUnit } from '@almanac/units/format-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import { type ResinKind, resinKindOr8 } from '../resin/resin-kinds.ts'
import { type TubeLength, tubeLength } from '../tanks/distributor-tube.ts'
import { fillForTank, type TankFill } from '../tanks/fill-for-tank.ts'
import { checkTankSize, tankShell } from '../tanks/tank-geometry.ts'
import { type BagPlan, CUBIC_FOOT_BAGS, LITRE_BAGS, planBags } from './bag-plan.ts'
import { chooseTube } from './choose-tube.ts'
import { decideGravel } from './decide-gravel.ts'
import { jobWeight } from './job-weight.ts'
import { gravelLines, resinLines, tubeLine } from './kit-material-lines.ts'
import { spentResinFt3, supplyLines } from './kit-supply-lines.ts'
import type { KitLine, RebedKit, RebedKitInput } from './kit-types.ts'

/**
 * What one rebed of one tank needs: resin in whole and part bags, gravel, tube with its cut length, seals, sanitiser, containers, and
 * the weights. Needs the tank's size; the rest is assumed and said so. Refuses when the size is unknown or impossible.
 */
export function rebedKit(input: RebedKitInput): Result<RebedKit> {
  const { diameterIn, heightIn } = input
  if (diameterIn === null || heightIn === null) {
    return refuse('The kit cannot be made up until the tank diameter and height are known; ask at the next call or measure them.')
  }
  const wrong = checkTankSize(diameterIn, heightIn)
  if (wrong) return wrong
  const recorded = { diameterIn, heightIn, nominalGrains: input.nominalGrains, resinFt3: input.resinVolumeFt3, gravelLb: input.gravelLb }
  const fill = fillForTank(recorded, input.figures?.tanks)
  if (!fill.ok) return fill
  const usualBags = input.display.unitSystem === 'metric' ? LITRE_BAGS : CUBIC_FOOT_BAGS
  const bagPlan = planBags(fill.value.resinFt3, input.bagSizes ?? input.figures?.bagSizes ?? usualBags)
  if (bagPlan === null) return refuse('No bag plan covers this resin volume; check the bag sizes in stock and the resin volume.')
  return assemble(input, { diameterIn, heightIn }, fill, bagPlan)
}

type Size = { diameterIn: number; heightIn: number }

function assemble(input: RebedKitInput, size: Size, fill: Extract<Result<TankFill>, { ok: true }>, bagPlan: BagPlan): Result<RebedKit> {
  const { resinFt3 } = fill.value
  const { kind, assumption } = resinKindOr8(input.resinKind)
  const gravel = decideGravel(input, fill.value)
  const shell = tankShell(size.diameterIn, size.heightIn)
  const tube = withOffset(tubeLength(shell, input.oldTubeLengthIn), input.tubeOffsetIn)
  const choice = chooseTube({ ...input, recordedOdIn: input.tubeOutsideDiameterIn, diameterIn: size.diameterIn })
  const heaviestBagLb = Math.max(...bagPlan.bags.map((bag) => bag.volumeFt3)) * kind.wetWeightLbFt3.value
  const weight = jobWeight({ ...size, resinFt3, gravelLb: gravel.presentLb, resinKind: kind.id, heaviestBagLb, access: input.access })
  if (!weight.ok) return weight
  const lines: KitLine[] = [
    ...resinLines(bagPlan, kind, fill.value, input.display),
    ...gravelLines(gravel, size.diameterIn, input.display),
    tubeLine(tube, choice, input.valve?.tubeRule ?? null, input.display),
    ...supplyLines({
      resinFt3,
      gravelOutLb: gravel.takenOutLb,
      bleachPercent: input.bleachPercent,
      openingIn: input.openingIn,
      valveSeals: input.valve?.seals ?? null,
      display: input.display,
    }),
  ]
  const { fullTankLb, heaviestLiftLb, heaviestLift, crewSize, crewWhy } = weight.value
  const value: RebedKit = {
    lines,
    resinKind: kind.id,
    resinFt3,
    bagPlan,
    gravelLb: gravel.newLb,
    tubeLengthIn: tube.lengthIn,
    tubeOutsideDiameterIn: choice.outsideDiameterIn,
    loadWeightLb: sum(lines, (line) => line.weightLb),
    loadVolumeFt3: sum(lines, (line) => line.volumeFt3),
    spentResinFt3: spentResinFt3(resinFt3),
    ...{ fullTankLb, heaviestLiftLb, heaviestLift, crewSize, crewWhy },
    warnings: [...fill.value.warnings, ...bagWarnings(bagPlan, resinFt3, kind, input.display), ...(choice.warning ? [choice.warning] : [])],
  }
  return ok(value, {
    assumptions: [
      ...fill.assumptions,
      ...(assumption ? [assumption] : []),
      ...gravel.assumptions,
      ...(choice.basis === 'usual' ? ['Outside diameter of the distributor tube assumed as usual for this tank (from memory).'] : []),
      ...weight.assumptions,
    ],
    missing: [
      ...fill.missing,
      ...(tube.basis === 'estimate' ? ['length of the old distributor tube'] : []),
      ...(input.openingIn == null ? ['size of the tank opening'] : []),
    ],
    sources: [...fill.sources, ...weight.sources, ...lines.map((line) => line.source)],
  })
}

/** Offsets beyond this are a slip of entry, in. */
const MOST_OFFSET_IN = 3

function withOffset(tube: TubeLength, offsetIn: number | null | undefined): TubeLength {
  if (tube.basis === 'old tube' || offsetIn == null || !(Math.abs(offsetIn) <= MOST_OFFSET_IN)) return tube
  return { ...tube, lengthIn: tube.lengthIn + offsetIn }
}

function bagWarnings(plan: BagPlan, resinFt3: number, kind: ResinKind, display: AmountDisplay): string[] {
  const left =
    plan.wasteFt3 > 0.05 * resinFt3
      ? [`The bags leave ${withUnit(plan.wasteFt3, 2, 'ft³', display)} over: close the opened bag well, resin must not dry out.`]
      : []
  const mesh = kind.id === 'fine-mesh' ? ['Fine mesh needs a distributor with slots fine enough to hold it: check the basket.'] : []
  return [...left, ...mesh]
}

function sum(lines: KitLine[], pick: (line: KitLine) => number | null): number {
  return lines.reduce((total, line) => total + (pick(line) ?? 0), 0)
}
