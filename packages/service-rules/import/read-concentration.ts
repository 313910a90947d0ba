import { type ConcentrationUnit, convertConcentration } from '@almanac/units/concentration'
import type { ConcentrationReading } from './import-types.ts'
import { readPlainNumber } from './read-number.ts'
import { type Reading, read, unreadable } from './reading.ts'

export type Substance = 'iron' | 'chlorine'

/**
 * Above these a value is a slip. Iron: common practice, no source. Chlorine: well above the 4.0 mg/L that 40 CFR 141.65 allows as the
 * yearly average of free chlorine or chloramine, so that a true peak passes.
 */
const highestMgL: Record<Substance, number> = { iron: 60, chlorine: 10 }

const units: readonly [RegExp, ConcentrationUnit][] = [
  [/^(?:mg\s*\/\s*l|mgl|mg|ppm|p\.p\.m\.?)(?:\s*(?:as\s*)?(?:fe|cl2?|cl₂))?$/, 'mg/L'],
  [/^(?:[µμu]g\s*\/\s*l|[µμu]gl|[µμu]g|ppb|mcg(?:\s*\/\s*l)?)(?:\s*(?:as\s*)?(?:fe|cl2?|cl₂))?$/, 'ug/L'],
]

/** The unit of concentration a text names; null where it names none. */
export function concentrationUnitIn(text: string): ConcentrationUnit | null {
  const plain = text.trim().toLowerCase()
  return units.find(([pattern]) => pattern.test(plain))?.[1] ?? null
}

/**
 * Iron or chlorine: "0.3 mg/L", "300 µg/L", "0.3 ppm", "<0.05", "trace", "none". A bare number is in the column's unit, and in mg/L where
 * none was chosen, because that is how tests of both are read.
 */
export function readConcentration(text: string, substance: Substance, columnUnit: ConcentrationUnit | null): Reading<ConcentrationReading> {
  const plain = text.trim()
  if (/^(?:none|nil|zero|no|nd|n\.d\.|not detected|neg(?:ative)?|clear)$/i.test(plain)) {
    return read({ mgL: 0, atMost: false, enteredValue: 0, enteredUnit: 'mg/L', asWritten: text })
  }
  if (/^(?:trace|traces|tr\.?|slight)$/i.test(plain)) {
    const value = { mgL: 0.1, atMost: true, enteredValue: 0.1, enteredUnit: 'mg/L', asWritten: text } as const
    return read(value, `"${text}" was read as at most 0.1 mg/L (common practice).`)
  }
  const match = /^(<=?|≤|under|below|less than|~|≈|ca\.?|about)?\s*([\d.,]*\d)(?:\s*(?:-|–|to)\s*([\d.,]*\d))?\s*([^\d].*)?$/i.exec(plain)
  const low = match?.[2] === undefined ? null : readPlainNumber(match[2])
  const high = match?.[3] === undefined ? low : readPlainNumber(match[3])
  if (!match || low === null || high === null || high < low) {
    return unreadable(`Type the ${substance} as a number with its unit, such as 0.3 mg/L, or "none".`)
  }
  const named = match[4] ? concentrationUnitIn(match[4]) : null
  if (match[4] && !named) return unreadable(`"${match[4].trim()}" isn’t a unit for ${substance}. Use mg/L, ppm, µg/L or ppb.`)
  const unit = named ?? columnUnit ?? 'mg/L'
  const value = (low + high) / 2
  const mgL = convertConcentration(value, unit, 'mg/L')
  if (mgL > highestMgL[substance]) {
    return unreadable(`${value} ${unit} of ${substance} is more than water can hold. Check the unit; large numbers are usually µg/L.`)
  }
  const assumptions: string[] = []
  if (!named && !columnUnit && mgL > 0) assumptions.push(`"${text}" was read in mg/L.`)
  if (low !== high) assumptions.push(`"${text}" was read as its middle, ${value} ${unit}.`)
  const atMost = /^(?:<|≤|under|below|less)/i.test(match[1] ?? '')
  return read({ mgL, atMost, enteredValue: value, enteredUnit: unit, asWritten: text }, ...assumptions)
}
