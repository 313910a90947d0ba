import type { ResinKindId } from '@almanac/records/resin-kind'
import { eqLToKgrFt3 } from '@almanac/units/concentration'
import { nameEighths } from '@almanac/units/format-number'
import { LITRES_PER_FT3 } from '@almanac/units/volume'
import { type BagSize, CUBIC_FOOT_BAGS, LITRE_BAGS } from '../kit/bag-plan.ts'
import { RESIN_KINDS } from '../resin/resin-kinds.ts'
import { stoichiometricGrPerLb } from '../water/capacity.ts'
import type { CapacityCurve } from '../water/capacity-curves.ts'
import { FIRM_SOURCE } from './read-tank.ts'
import { readList, readNumber, WrongFigure } from './read-value.ts'

/** Bags closer than this are the same size, ft³. */
const SAME_FT3 = 1e-6

/** A bag by its volume, named as the trade names it where it does. */
function bagOf(volumeFt3: number): BagSize {
  const known = [...CUBIC_FOOT_BAGS, ...LITRE_BAGS].find((bag) => Math.abs(bag.volumeFt3 - volumeFt3) < SAME_FT3)
  if (known) return { label: known.label, volumeFt3 }
  const litres = volumeFt3 * LITRES_PER_FT3
  const wholeLitres = Math.abs(litres - Math.round(litres)) < 1e-3
  const eighths = Math.abs(volumeFt3 * 8 - Math.round(volumeFt3 * 8)) < SAME_FT3
  const ft3 = eighths ? nameEighths(volumeFt3) : Number(volumeFt3.toFixed(3))
  return { label: wholeLitres ? `${Math.round(litres)} L bag` : `${ft3} ft³ bag`, volumeFt3 }
}

/** Bag sizes, ft³, largest first. Throws `WrongFigure`. */
export function readBags(value: unknown): BagSize[] {
  const sizes = readList(value, 'Bag sizes', 1, 6).map((size) => readNumber(size, 'A bag', { least: 0.05, most: 50, unit: 'ft³' }))
  sizes.sort((a, b) => b - a)
  if (sizes.some((size, at) => at > 0 && (sizes[at - 1] ?? 0) - size < SAME_FT3))
    throw new WrongFigure('The same bag size stands there twice.')
  return sizes.map(bagOf)
}

/**
 * Points of a salt–capacity curve: both rise, and none lies above what the salt can do by charge nor above the resin's total capacity.
 * Throws `WrongFigure`.
 */
export function readCurve(kind: ResinKindId, usual: CapacityCurve, value: unknown): CapacityCurve {
  const most = eqLToKgrFt3(RESIN_KINDS[kind].totalCapacityEqL.value)
  let before: readonly [number, number] = [0, 0]
  const points = readList(value, 'Points of the curve', 2, 12).map((point) => {
    const [salt, capacity] = readList(point, 'A point of the curve', 2, 2)
    const saltLbFt3 = readNumber(salt, 'A salt dose', { least: 0.5, most: 40, unit: 'lb/ft³' })
    const capacityKgrFt3 = readNumber(capacity, 'A capacity', { least: 0.5, most: Number(most.toFixed(1)), unit: 'kgr/ft³' })
    if (saltLbFt3 <= before[0] || capacityKgrFt3 < before[1])
      throw new WrongFigure(`Salt and capacity must rise from point to point; ${saltLbFt3} lb with ${capacityKgrFt3} kgr does not.`)
    const limit = (stoichiometricGrPerLb('NaCl') * saltLbFt3) / 1000
    if (capacityKgrFt3 > limit)
      throw new WrongFigure(`${saltLbFt3} lb of salt cannot give ${capacityKgrFt3} kgr: by charge it is at most ${limit.toFixed(1)} kgr.`)
    before = [saltLbFt3, capacityKgrFt3]
    return before
  })
  return { ...usual, label: 'The firm’s own curve', points, source: FIRM_SOURCE }
}
