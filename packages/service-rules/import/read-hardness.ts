import { convertHardness, type HardnessUnit } from '@almanac/units/hardness'
import type { ColumnHardnessUnit, HardnessReading, KnownHardness } from './import-types.ts'
import { readPlainNumber } from './read-number.ts'
import { type Reading, read, unreadable } from './reading.ts'

/** Harder than this is brine or a slip of the unit. Common practice, no source. */
const HARDEST_GPG = 150

/** The most a bare number is read as grains where a column holds both: 60 mg/L is soft water, whose house needs no softener. Common practice, no source. */
export const MOST_BARE_GRAINS = 60

const units: readonly [RegExp, HardnessUnit][] = [
  [/^(?:gpg|gr\.?|grs\.?|grains?(?:\s*(?:per|\/)\s*(?:us\s*)?gal(?:lon)?)?|gr\s*\/\s*gal|g\s*\/\s*gal|gr\s*\/\s*g)$/, 'gpg'],
  [/^(?:mg\s*\/\s*l|mgl|mg|ppm|p\.p\.m\.?)(?:\s*(?:as\s*)?\(?caco3\)?)?$/, 'mg/L'],
  [/^(?:°\s*d(?:h)?|d\s*h|dgh|odh|deg(?:rees?)?\s*(?:dh|german)|german(?:\s*degrees?)?|grad(?:\s*dh)?)$/, 'dH'],
  [/^(?:°\s*f(?:h)?|f\s*h|tfh|french(?:\s*degrees?)?)$/, 'fH'],
  [/^mmol(?:\s*\/\s*l)?$/, 'mmol/L'],
]

/** The unit of a bare number in a column that holds both: the one nearer to what is known of its supply, else the one its size fits. */
export function fittingUnit(value: number, known: KnownHardness | null): 'gpg' | 'mg/L' {
  if (value > MOST_BARE_GRAINS) return 'mg/L'
  if (!known || value <= 0) return 'gpg'
  const away = (unit: HardnessUnit) => Math.abs(Math.log(convertHardness(value, unit, 'gpg') / known.gpg))
  return away('mg/L') < away('gpg') ? 'mg/L' : 'gpg'
}

/** The hardness unit a text names, such as "gpg", "ppm" or "°dH"; null where it names none. */
export function hardnessUnitIn(text: string): HardnessUnit | null {
  const plain = text.trim().toLowerCase().replaceAll('₃', '3').replaceAll('º', '°')
  return units.find(([pattern]) => pattern.test(plain))?.[1] ?? null
}

/**
 * Hardness with its unit, "18 gpg", "310 mg/L", "17 °dH", or a bare number in the unit chosen for its column, which may be whichever fits its size and what is known of its supply. A range "18-20 gpg" gives its middle.
 * Zero is allowed, since a softened tap reads so.
 */
export function readHardness(
  text: string,
  columnUnit: ColumnHardnessUnit | null,
  known: KnownHardness | null = null,
): Reading<HardnessReading> {
  const match = /^(?:~|≈|c(?:irc)?a\.?|about|approx\.?)?\s*([\d.,\s]*\d)(?:\s*(?:-|–|to)\s*([\d.,]*\d))?\s*\+?\s*([^\d].*)?$/i.exec(
    text.trim(),
  )
  const low = match?.[1] === undefined ? null : readPlainNumber(match[1])
  const high = match?.[2] === undefined ? low : readPlainNumber(match[2])
  if (!match || low === null || high === null) return unreadable('Type the hardness as a number with its unit, such as 18 gpg or 310 mg/L.')
  if (high < low) return unreadable(`In "${text}" the second number is smaller than the first. Type one number, such as 18 gpg.`)
  const named = match[3] ? hardnessUnitIn(match[3]) : null
  if (match[3] && !named) return unreadable(`"${match[3].trim()}" isn’t a unit of hardness. Use gpg, mg/L, ppm, °dH, °fH or mmol/L.`)
  const bySize = named === null && columnUnit === 'each-by-size'
  const unit = named ?? (columnUnit === 'each-by-size' ? fittingUnit(high, known) : columnUnit)
  if (!unit) return unreadable(`"${text}" has no unit. Choose the unit for this column, or type it beside the number, such as ${text} gpg.`)
  const value = (low + high) / 2
  const hardnessGpg = convertHardness(value, unit, 'gpg')
  if (hardnessGpg > HARDEST_GPG) {
    return unreadable(`${value} ${unit} is harder than any tap or well water. Check the unit; numbers above 60 are usually mg/L.`)
  }
  const assumptions = [
    ...(low === high ? [] : [`"${text}" was read as its middle, ${value} ${unit}.`]),
    ...(bySize ? [`"${text}" has no unit and was read as ${unit === 'gpg' ? 'grains per gallon' : 'mg/L'}, ${whyUnit(high, known)}`] : []),
  ]
  return read({ hardnessGpg, enteredValue: value, enteredUnit: unit, asWritten: text }, ...assumptions)
}

function whyUnit(value: number, known: KnownHardness | null): string {
  return known && value > 0 && value <= MOST_BARE_GRAINS
    ? `as ${known.rows} other rows give this supply about ${Number(known.gpg.toPrecision(2))} gpg.`
    : 'which fits its size.'
}
