import { AppError } from '@almanac/runtime/errors'
import { convertConcentration } from '@almanac/units/concentration'
import { convertHardness, type HardnessUnit } from '@almanac/units/hardness'

type HardnessTyped = { value: number; unit: HardnessUnit }
type ConcentrationTyped = { value: number; unit: 'mg/L' | 'ug/L' }

/** Beyond these a value is a slip of the pen: waters that reach softeners stay well below. Common practice, no source. */
const MOST = { hardnessGpg: 200, chlorineMgL: 20, ironMgL: 100, manganeseMgL: 50 }

function within(name: string, value: number, most: number, unit: string): number {
  if (value <= most) return value
  throw new AppError(
    'invalid',
    `${name} of ${Number(value.toPrecision(3))} ${unit} cannot be right. Nothing was saved; check the value and its unit.`,
  )
}

/** Hardness as typed, in gpg as CaCO₃; null when none was typed. */
export function hardnessGpg(typed: HardnessTyped | undefined): number | null {
  return typed ? within('A hardness', convertHardness(typed.value, typed.unit, 'gpg'), MOST.hardnessGpg, 'gpg') : null
}

/** Chlorine as typed, in mg/L as Cl₂. */
export function chlorineMgL(typed: ConcentrationTyped | undefined): number | null {
  return typed ? within('A chlorine residual', convertConcentration(typed.value, typed.unit, 'mg/L'), MOST.chlorineMgL, 'mg/L') : null
}

/** Iron as typed, in mg/L. */
export function ironMgL(typed: ConcentrationTyped | undefined): number | null {
  return typed ? within('An iron content', convertConcentration(typed.value, typed.unit, 'mg/L'), MOST.ironMgL, 'mg/L') : null
}

/** Manganese as typed, in mg/L. */
export function manganeseMgL(typed: ConcentrationTyped | undefined): number | null {
  return typed ? within('A manganese content', convertConcentration(typed.value, typed.unit, 'mg/L'), MOST.manganeseMgL, 'mg/L') : null
}

/** What was typed, to be kept beside the canonical values. */
export function enteredOf(
  typed: Record<string, { value: number; unit: string } | undefined>,
): Record<string, { value: number; unit: string }> {
  return Object.fromEntries(Object.entries(typed).flatMap(([key, value]) => (value ? [[key, value]] : [])))
}
