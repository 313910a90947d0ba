import { convertConcentration } from '@almanac/units/concentration'
import { convertHardness, type HardnessUnit } from '@almanac/units/hardness'
import { checkAmounts } from '../shared/check-amounts.ts'

type HardnessTyped = { value: number; unit: HardnessUnit }
type ConcentrationTyped = { value: number; unit: 'mg/L' | 'ug/L' }

type WaterTyped = {
  hardness?: HardnessTyped
  residual?: ConcentrationTyped
  freeChlorine?: ConcentrationTyped
  totalChlorine?: ConcentrationTyped
  iron?: ConcentrationTyped
  manganese?: ConcentrationTyped
  ph?: number
  why?: Record<string, string>
}

/** Refuses values that water cannot have, and unusual ones without a reason. */
export function checkWater({ hardness, residual, freeChlorine, totalChlorine, iron, manganese, ph, why }: WaterTyped): void {
  const chlorine = (typed: ConcentrationTyped | undefined) => typed && { kind: 'chlorine' as const, ...typed }
  checkAmounts(
    {
      hardness: hardness && { kind: 'hardness', ...hardness },
      residual: chlorine(residual),
      freeChlorine: chlorine(freeChlorine),
      totalChlorine: chlorine(totalChlorine),
      iron: iron && { kind: 'iron', ...iron },
      manganese: manganese && { kind: 'manganese', ...manganese },
      ph: ph === undefined ? null : { kind: 'ph', value: ph, unit: '' },
    },
    why,
  )
}

/** Hardness as typed, in gpg as CaCO₃; null when none was typed. */
export const hardnessGpg = (typed: HardnessTyped | undefined): number | null =>
  typed ? convertHardness(typed.value, typed.unit, 'gpg') : null

/** A concentration as typed, in mg/L. */
export const inMgL = (typed: ConcentrationTyped | undefined): number | null =>
  typed ? convertConcentration(typed.value, typed.unit, 'mg/L') : null
