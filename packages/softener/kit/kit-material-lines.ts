import { formatCutLengthIn, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { showWhole } from '@almanac/units/format-number'
import type { ResinKind } from '../resin/resin-kinds.ts'
import { GRAVEL_BULK_LB_FT3 } from '../tanks/bed-levels.ts'
import { type TubeLength, tubeDiameterText } from '../tanks/distributor-tube.ts'
import type { TankFill } from '../tanks/fill-for-tank.ts'
import { type BagPlan, bagName } from './bag-plan.ts'
import { TUBE_CUT_TOLERANCE_IN, type TubeChoice } from './choose-tube.ts'
import type { GravelDecision } from './decide-gravel.ts'
import type { KitLine } from './kit-types.ts'
import type { Speaking } from './speaking.ts'

/** One line for each bag size of the plan. */
export function resinLines(plan: BagPlan, kind: ResinKind, fill: TankFill, { display, words }: Speaking): KitLine[] {
  const why = words('resinWhy', { volume: formatVolumeFt3(fill.resinFt3, display), basis: words(`basis/${fill.resinBasis}`) })
  const resin = words(kind.id)
  return plan.bags.map((bag) => ({
    item: 'resin',
    label: words('resinLabel', { resin, bag: bagName(bag.volumeFt3, words) }),
    quantity: bag.count,
    unit: 'bag',
    text: words('resinText', { count: showWhole(bag.count, display), bag: bagName(bag.volumeFt3, words), resin }),
    why,
    source: words(fill.resinBasis === 'recorded' ? 'source/record' : 'source/practice'),
    weightLb: bag.count * bag.volumeFt3 * kind.wetWeightLbFt3.value,
    volumeFt3: bag.count * bag.volumeFt3,
    toReturn: false,
  }))
}

/** From this diameter gravel is laid in two layers, fine over coarse; from memory, unverified. */
const LAYERED_GRAVEL_FROM_IN = 14
/** Share of the coarse layer; from memory, unverified. */
const COARSE_SHARE = 0.5

/** Gravel by layer; none when none is wanted. Weights in whole pounds. */
export function gravelLines(gravel: GravelDecision, diameterIn: number, speaking: Speaking): KitLine[] {
  const { words } = speaking
  if (gravel.newLb < 0.5) return []
  if (diameterIn < LAYERED_GRAVEL_FROM_IN || gravel.newLb < 4) return [gravelLine('gravel', gravel.newLb, gravel.why, speaking)]
  const coarseLb = Math.round(gravel.newLb * COARSE_SHARE)
  return [
    gravelLine('gravelCoarse', coarseLb, words('coarseFirst', { why: gravel.why }), speaking),
    gravelLine('gravelFine', gravel.newLb - coarseLb, words('fineOnCoarse', { why: gravel.why }), speaking),
  ]
}

type Layer = 'gravel' | 'gravelCoarse' | 'gravelFine'

function gravelLine(layer: Layer, weightLb: number, why: string, { display, words }: Speaking): KitLine {
  const label = words(layer)
  const text = words('gravelText', { weight: formatWeightLb(weightLb, display), gravel: label.toLowerCase() })
  return {
    item: 'gravel',
    label,
    quantity: weightLb,
    unit: 'lb',
    text,
    why,
    source: words('source/practice'),
    weightLb,
    volumeFt3: weightLb / GRAVEL_BULK_LB_FT3,
    toReturn: false,
  }
}

const TEXTS = {
  tube: { 'old tube': 'tubeText', estimate: 'tubeTextAbout' },
  hub: { 'old tube': 'hubText', estimate: 'hubTextAbout' },
} as const

/** The new tube with its basket, how its length is found, and how exactly it is cut. `tubeRule` is the valve's word on how high it stands; a `hub` has laterals in the basket's place. */
export function tubeLine(
  tube: TubeLength,
  choice: TubeChoice,
  { tubeRule, hub }: { tubeRule: string | null; hub: boolean },
  { display, words }: Speaking,
): KitLine {
  const across = tubeDiameterText(choice.outsideDiameterIn, display)
  const cut = { length: formatCutLengthIn(tube.lengthIn, display), tolerance: formatCutLengthIn(TUBE_CUT_TOLERANCE_IN, display) }
  const reasons = { diameter: choice.why, length: tube.how }
  return {
    item: 'distributor-tube',
    label: words(hub ? 'hub' : 'tube', { across }),
    quantity: 1,
    unit: 'piece',
    text: words(TEXTS[hub ? 'hub' : 'tube'][tube.basis], { across, ...cut }),
    why: tubeRule ? words('tubeWhyValve', { ...reasons, rule: tubeRule }) : words('tubeWhy', reasons),
    source: words(tube.basis === 'old tube' && choice.basis !== 'usual' ? 'source/practice' : 'source/memory'),
    weightLb: null,
    volumeFt3: null,
    toReturn: false,
  }
}
