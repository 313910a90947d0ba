import { withUnit } from '@almanac/units/format-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import { type ResinKind, resinKindOr8 } from '../resin/resin-kinds.ts'
import { hasHub, mayHaveHub } from '../tanks/distributor-tube.ts'
import { fillForTank, type TankFill } from '../tanks/fill-for-tank.ts'
import { checkTankSize } from '../tanks/tank-geometry.ts'
import { type BagPlan, CUBIC_FOOT_BAGS, LITRE_BAGS, planBags } from './bag-plan.ts'
import { chooseTube } from './choose-tube.ts'
import { cutTube } from './cut-tube.ts'
import { decideGravel } from './decide-gravel.ts'
import { jobWeight } from './job-weight.ts'
import { gravelLines, resinLines, tubeLine } from './kit-material-lines.ts'
import { spentResinFt3, supplyLines } from './kit-supply-lines.ts'
import type { KitLine, RebedKit, RebedKitInput } from './kit-types.ts'
import type { Speaking } from './speaking.ts'
import { valveTexts } from './valve-texts.ts'

/**
 * What one rebed of one tank needs: resin in whole and part bags, gravel, tube with its cut length, seals, sanitiser, containers, and
 * the weights. Needs the tank's size; the rest is assumed and said so. Refuses when the size is unknown or impossible.
 */
export function rebedKit(input: RebedKitInput): Result<RebedKit> {
  const { diameterIn, heightIn, words } = input
  if (diameterIn === null || heightIn === null) {
    return refuse(words('noSize'))
  }
  const wrong = checkTankSize(diameterIn, heightIn, words)
  if (wrong) return wrong
  const recorded = { diameterIn, heightIn, nominalGrains: input.nominalGrains, resinFt3: input.resinVolumeFt3, gravelLb: input.gravelLb }
  const fill = fillForTank(recorded, input, input.figures?.tanks)
  if (!fill.ok) return fill
  const usualBags = input.display.unitSystem === 'metric' ? LITRE_BAGS : CUBIC_FOOT_BAGS
  const bagPlan = planBags(fill.value.resinFt3, input.bagSizes ?? input.figures?.bagSizes ?? usualBags)
  if (bagPlan === null) return refuse(words('noBags'))
  return assemble(input, { diameterIn, heightIn }, fill, bagPlan)
}

type Size = { diameterIn: number; heightIn: number }

function assemble(input: RebedKitInput, size: Size, fill: Extract<Result<TankFill>, { ok: true }>, bagPlan: BagPlan): Result<RebedKit> {
  const { resinFt3 } = fill.value
  const { words, display } = input
  const speaking = { words, display }
  const { kind, assumed: resinAssumed } = resinKindOr8(input.resinKind)
  const gravel = decideGravel(input, fill.value)
  const tube = cutTube(input, size)
  const choice = chooseTube({ ...input, recordedOdIn: input.tubeOutsideDiameterIn, diameterIn: size.diameterIn })
  const valve = input.valve ? valveTexts(input.valve, words) : null
  const heaviestBagLb = Math.max(...bagPlan.bags.map((bag) => bag.volumeFt3)) * kind.wetWeightLbFt3.value
  const weight = jobWeight({
    ...size,
    ...speaking,
    resinFt3,
    gravelLb: gravel.presentLb,
    resinKind: kind.id,
    heaviestBagLb,
    access: input.access,
  })
  if (!weight.ok) return weight
  const lines: KitLine[] = [
    ...resinLines(bagPlan, kind, fill.value, speaking),
    ...gravelLines(gravel, size.diameterIn, speaking),
    tubeLine(tube, choice, { tubeRule: valve?.tubeRule ?? null, hub: hasHub(size.diameterIn) }, speaking),
    ...supplyLines({
      resinFt3,
      gravelOutLb: gravel.takenOutLb,
      bleachPercent: input.bleachPercent,
      openingIn: input.openingIn,
      valveSeals: valve?.seals ?? null,
      ...speaking,
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
    warnings: [
      ...(mayHaveHub(size.diameterIn) ? [words('hubByCard')] : []),
      ...fill.value.warnings,
      ...bagWarnings(bagPlan, resinFt3, kind, speaking),
      ...(choice.warning ? [choice.warning] : []),
    ],
  }
  return ok(value, {
    assumptions: [
      ...fill.assumptions,
      ...(resinAssumed ? [words('resinAssumed')] : []),
      ...gravel.assumptions,
      ...(choice.basis === 'usual' ? [words('tubeAssumed')] : []),
      ...weight.assumptions,
    ],
    missing: [
      ...fill.missing,
      ...(tube.basis === 'estimate' ? [words('missing/tube')] : []),
      ...(input.openingIn == null ? [words('missing/opening')] : []),
    ],
    sources: [...fill.sources, ...weight.sources, ...lines.map((line) => line.source)],
  })
}

function bagWarnings(plan: BagPlan, resinFt3: number, kind: ResinKind, { words, display }: Speaking): string[] {
  const left = plan.wasteFt3 > 0.05 * resinFt3 ? [words('bagsLeave', { volume: withUnit(plan.wasteFt3, 2, 'ft³', display) })] : []
  const mesh = kind.id === 'fine-mesh' ? [words('fineMeshBasket'), words('fineMeshControl')] : []
  return [...left, ...mesh]
}

function sum(lines: KitLine[], pick: (line: KitLine) => number | null): number {
  return lines.reduce((total, line) => total + (pick(line) ?? 0), 0)
}
