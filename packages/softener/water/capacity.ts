import type { ResinKindId } from '@almanac/records/resin-kind'
import { CACO3_G_PER_EQ, eqLToKgrFt3, KCL_G_PER_EQ, NACL_G_PER_EQ } from '@almanac/units/concentration'
import { GRAMS_PER_LB, MG_PER_GRAIN } from '@almanac/units/mass'
import { RESIN_KINDS } from '../resin/resin-kinds.ts'
import { type CapacityCurve, usualCurve } from './capacity-curves.ts'

export type Salt = 'NaCl' | 'KCl'

/** Most hardness one lb of salt can remove by charge: 5,994 gr for NaCl, 4,699 for KCl; derived from atomic weights. */
export function stoichiometricGrPerLb(salt: Salt): number {
  const equivalentG = salt === 'NaCl' ? NACL_G_PER_EQ : KCL_G_PER_EQ
  return ((GRAMS_PER_LB / equivalentG) * CACO3_G_PER_EQ * 1000) / MG_PER_GRAIN
}

/**
 * Operating capacity, kgr/ft³, at a salt dose in lb/ft³: straight between the curve's points, in proportion below the first, flat above
 * the last; never above the stoichiometric limit nor the resin's total capacity. KCl counts by its equivalents. A dose of 0 gives 0.
 */
export function capacityKgrFt3(
  kindId: ResinKindId,
  saltLbFt3: number,
  salt: Salt = 'NaCl',
  curve: CapacityCurve = usualCurve(kindId),
): number {
  if (!(saltLbFt3 > 0)) return 0
  const asNaCl = salt === 'NaCl' ? saltLbFt3 : (saltLbFt3 * NACL_G_PER_EQ) / KCL_G_PER_EQ
  const limit = Math.min((stoichiometricGrPerLb(salt) * saltLbFt3) / 1000, eqLToKgrFt3(RESIN_KINDS[kindId].totalCapacityEqL.value))
  return Math.min(alongCurve(curve, asNaCl), limit)
}

function alongCurve(curve: CapacityCurve, saltLbFt3: number): number {
  let fromSalt = 0
  let fromCapacity = 0
  for (const [atSalt, atCapacity] of curve.points) {
    if (saltLbFt3 <= atSalt) return fromCapacity + ((atCapacity - fromCapacity) * (saltLbFt3 - fromSalt)) / (atSalt - fromSalt)
    fromSalt = atSalt
    fromCapacity = atCapacity
  }
  return fromCapacity
}
