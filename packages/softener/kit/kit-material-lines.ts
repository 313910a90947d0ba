import type { AmountDisplay } from '@almanac/units/display'
import { formatCutLengthIn, formatLengthIn, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { withUnit } from '@almanac/units/format-number'
import { COMMON_PRACTICE, FROM_MEMORY } from '@almanac/units/sourced'
import type { ResinKind } from '../resin/resin-kinds.ts'
import { GRAVEL_BULK_LB_FT3 } from '../tanks/bed-levels.ts'
import type { TubeLength } from '../tanks/distributor-tube.ts'
import type { TankFill } from '../tanks/fill-for-tank.ts'
import type { BagPlan } from './bag-plan.ts'
import { TUBE_CUT_TOLERANCE_IN, type TubeChoice } from './choose-tube.ts'
import type { GravelDecision } from './decide-gravel.ts'
import type { KitLine } from './kit-types.ts'

/** One line for each bag size of the plan. */
export function resinLines(plan: BagPlan, kind: ResinKind, fill: TankFill, display: AmountDisplay): KitLine[] {
  const need = `${formatVolumeFt3(fill.resinFt3, display)} of resin needed, ${WHERE_FROM[fill.resinBasis]}`
  return plan.bags.map((bag) => ({
    item: 'resin',
    label: `${kind.label}, ${bag.label}`,
    quantity: bag.count,
    unit: 'bag',
    text: `${bag.count} × ${bag.label} of ${kind.label}`,
    why: `${need}; bags chosen to leave the least over.`,
    source: fill.resinBasis === 'recorded' ? 'service record' : COMMON_PRACTICE,
    weightLb: bag.count * bag.volumeFt3 * kind.wetWeightLbFt3.value,
    volumeFt3: bag.count * bag.volumeFt3,
    toReturn: false,
  }))
}

const WHERE_FROM: Record<TankFill['resinBasis'], string> = {
  recorded: 'as recorded for this tank',
  label: 'from the nominal grains',
  table: 'as usual for this tank size',
  geometry: 'worked out from the tank size',
}

/** From this diameter gravel is laid in two layers, fine over coarse; from memory, unverified. */
const LAYERED_GRAVEL_FROM_IN = 14
/** Share of the coarse layer; from memory, unverified. */
const COARSE_SHARE = 0.5

/** Gravel by layer; none when none is wanted. Weights in whole pounds. */
export function gravelLines(gravel: GravelDecision, diameterIn: number, display: AmountDisplay): KitLine[] {
  if (gravel.newLb < 0.5) return []
  if (diameterIn < LAYERED_GRAVEL_FROM_IN || gravel.newLb < 4) return [gravelLine('Quartz gravel', gravel.newLb, gravel.why, display)]
  const coarseLb = Math.round(gravel.newLb * COARSE_SHARE)
  return [
    gravelLine('Quartz gravel, coarse (first layer)', coarseLb, `${gravel.why} The coarse layer goes in first.`, display),
    gravelLine(
      'Quartz gravel, fine (second layer)',
      gravel.newLb - coarseLb,
      `${gravel.why} The fine layer lies on the coarse one.`,
      display,
    ),
  ]
}

function gravelLine(label: string, weightLb: number, why: string, display: AmountDisplay): KitLine {
  const text = `${formatWeightLb(weightLb, display)} of ${label.toLowerCase()}`
  return {
    item: 'gravel',
    label,
    quantity: weightLb,
    unit: 'lb',
    text,
    why,
    source: COMMON_PRACTICE,
    weightLb,
    volumeFt3: weightLb / GRAVEL_BULK_LB_FT3,
    toReturn: false,
  }
}

/** The new tube with its basket, how its length is found, and how exactly it is cut. `tubeRule` is the valve's word on how high it stands. */
export function tubeLine(tube: TubeLength, choice: TubeChoice, tubeRule: string | null, display: AmountDisplay): KitLine {
  const cut = `${formatCutLengthIn(tube.lengthIn, display)} (± ${formatCutLengthIn(TUBE_CUT_TOLERANCE_IN, display)})`
  const od = choice.outsideDiameterIn
  const across = display.unitSystem === 'us' ? withUnit(od, 3, 'in', display) : formatLengthIn(od, display)
  const length = tube.basis === 'old tube' ? `cut to ${cut}` : `cut to about ${cut}`
  const valve = tubeRule ? ` By the valve: ${tubeRule}` : ''
  return {
    item: 'distributor-tube',
    label: `Distributor tube with basket, ${across} outside diameter`,
    quantity: 1,
    unit: 'piece',
    text: `1 distributor tube with basket, ${across} outside diameter, ${length}`,
    why: `Renewed with the bed: its screen grows brittle too. ${choice.why} ${tube.how}${valve}`,
    source: tube.basis === 'old tube' && choice.basis !== 'usual' ? COMMON_PRACTICE : FROM_MEMORY,
    weightLb: null,
    volumeFt3: null,
    toReturn: false,
  }
}
