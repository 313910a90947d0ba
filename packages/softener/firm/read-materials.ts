import type { ResinKindId } from '@almanac/records/resin-kind'
import { eqLToKgrFt3 } from '@almanac/units/concentration'
import type { BagSize } from '../kit/bag-plan.ts'
import { RESIN_KINDS } from '../resin/resin-kinds.ts'
import { stoichiometricGrPerLb } from '../water/capacity.ts'
import type { CapacityCurve } from '../water/capacity-curves.ts'
import { FIRM_SOURCE } from './read-tank.ts'
import { listWithin, numberWithin, WrongFigure } from './read-value.ts'

/** Bags closer than this are the same size, ft³. */
const SAME_FT3 = 1e-6

/** Bag sizes, ft³, largest first. Throws `WrongFigure`. */
export function readBags(value: unknown): BagSize[] {
  const sizes = listWithin(value, 'Bag sizes', 1, 6).map((size) => numberWithin(size, 'A bag', { least: 0.05, most: 50, unit: 'ft³' }))
  sizes.sort((a, b) => b - a)
  if (sizes.some((size, at) => at > 0 && (sizes[at - 1] ?? 0) - size < SAME_FT3))
    throw new WrongFigure('The same bag size is listed twice.')
  return sizes.map((volumeFt3) => ({ volumeFt3 }))
}

/**
 * Points of a salt–capacity curve: both rise, and none lies above what the salt can do by charge nor above the resin's total capacity.
 * Throws `WrongFigure`.
 */
export function readCurve(kind: ResinKindId, usual: CapacityCurve, value: unknown): CapacityCurve {
  const most = eqLToKgrFt3(RESIN_KINDS[kind].totalCapacityEqL.value)
  let before: readonly [number, number] = [0, 0]
  const points = listWithin(value, 'Points of the curve', 2, 12).map((point) => {
    const [salt, capacity] = listWithin(point, 'A point of the curve', 2, 2)
    const saltLbFt3 = numberWithin(salt, 'A salt dose', { least: 0.5, most: 40, unit: 'lb/ft³' })
    const capacityKgrFt3 = numberWithin(capacity, 'A capacity', { least: 0.5, most: Number(most.toFixed(1)), unit: 'kgr/ft³' })
    if (saltLbFt3 <= before[0] || capacityKgrFt3 < before[1])
      throw new WrongFigure(`Salt and capacity must rise from point to point; ${saltLbFt3} lb with ${capacityKgrFt3} kgr does not.`)
    const limit = (stoichiometricGrPerLb('NaCl') * saltLbFt3) / 1000
    if (capacityKgrFt3 > limit)
      throw new WrongFigure(`${saltLbFt3} lb of salt cannot give ${capacityKgrFt3} kgr: by charge it is at most ${limit.toFixed(1)} kgr.`)
    before = [saltLbFt3, capacityKgrFt3]
    return before
  })
  return { ...usual, label: 'Your company’s own curve', points, source: FIRM_SOURCE }
}
