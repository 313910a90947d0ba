import { convertConcentration } from '@almanac/units/concentration'
import { convertFlow } from '@almanac/units/flow'
import { convertHardness } from '@almanac/units/hardness'
import { convertLength } from '@almanac/units/length'
import { convertMass } from '@almanac/units/mass'
import { parseQuantity } from '@almanac/units/parse-quantity'
import { convertPressure } from '@almanac/units/pressure'
import type { UnitSystem } from '@almanac/units/unit-system'
import { convertVolume } from '@almanac/units/volume'

type Offer = { us: string; metric: string; all: readonly string[]; convert: (value: number, from: string) => number }

const offer = <U extends string>(base: U, metric: U, all: readonly U[], convert: (value: number, from: U, to: U) => number): Offer => ({
  us: base,
  metric,
  all,
  convert: (value, from) => convert(value, from as U, base),
})

/** For each unit a value is stored in: the units it may be typed in. */
const OFFERS: Record<string, Offer> = {
  gpg: offer('gpg', 'mg/L', ['gpg', 'mg/L', 'dH', 'fH', 'mmol/L'], convertHardness),
  'mg/L': offer('mg/L', 'mg/L', ['mg/L', 'ug/L'], convertConcentration),
  in: offer('in', 'cm', ['in', 'cm', 'mm'], convertLength),
  psi: offer('psi', 'bar', ['psi', 'bar', 'kPa'], convertPressure),
  lb: offer('lb', 'kg', ['lb', 'kg'], convertMass),
  ft3: offer('ft3', 'L', ['ft3', 'L'], convertVolume),
  gpm: offer('gpm', 'L/min', ['gpm', 'L/min'], convertFlow),
}

/** The units to choose from for a value stored in `unit`; just that one where there is no other. */
export const unitsFor = (unit: string): readonly string[] => OFFERS[unit]?.all ?? [unit]

/** The unit to begin with. */
export const firstUnit = (unit: string, system: UnitSystem): string => OFFERS[unit]?.[system] ?? unit

/** Reads what was typed in `typedUnit` into the stored unit; null and a sentence where it is no number. */
export function readTyped(text: string, typedUnit: string, storedUnit: string): { value: number | null; error: string | undefined } {
  if (text.trim() === '') return { value: null, error: undefined }
  const known = OFFERS[storedUnit]
  if (!known) {
    const plain = Number(text.trim().replace(',', '.'))
    return Number.isFinite(plain) && plain >= 0
      ? { value: plain, error: undefined }
      : { value: null, error: `“${text}” is not a number. Type one such as 3.` }
  }
  const parsed = parseQuantity(`${text.trim()} ${typedUnit}`)
  return parsed.ok ? { value: known.convert(parsed.value, typedUnit), error: undefined } : { value: null, error: parsed.reason }
}
