import type { ResinKindId } from '@almanac/records/resin-kind'
import { convertVolume } from '@almanac/units/volume'
import type { ResinVolumeReading, ResinVolumeUnit } from './import-types.ts'
import { readFraction } from './read-number.ts'
import { type Reading, read, unreadable } from './reading.ts'

/** More resin than the largest tank in trade tables holds several times over; beyond it the unit is wrong. Common practice, no source. */
const LARGEST_FT3 = 60
const SMALLEST_FT3 = 0.1

/** The unit of volume at the end of a text: cubic feet or litres; null where it names neither. */
export function resinVolumeUnitIn(text: string): ResinVolumeUnit | null {
  const plain = text.trim().toLowerCase()
  if (
    /^(?:cu\.?\s*-?\s*f(?:ee|oo)?t\.?|c\.?f\.?|cuft\.?|ft\s*\^?\s*[3³]|cubic\s*-?\s*f(?:ee|oo)?t|cu\.?\s*ft\.?|cube|cubes|cubic)$/.test(
      plain,
    )
  )
    return 'ft3'
  if (/^(?:l|lt|ltr|ltrs|liters?|litres?|lit\.?)$/.test(plain)) return 'L'
  return null
}

/** A volume of resin, "1.5 cu ft", "1 1/2 ft³", "42 L", or a bare number in the column's unit. */
export function readResinVolume(text: string, columnUnit: ResinVolumeUnit | null): Reading<ResinVolumeReading> {
  const match = /^([\d.,/¼½¾\s-]*[\d¼½¾])\s*(?:of\s+)?([a-z][a-z.\s^³3-]*)?$/i.exec(text.trim())
  const value = match?.[1] === undefined ? null : readFraction(match[1])
  if (!match || value === null) return unreadable('Type the resin volume as a number with its unit, such as 1.5 cu ft or 42 L.')
  const words = (match[2] ?? '').replace(/\b(?:of\s+)?resin\b/i, '').trim()
  const named = words ? resinVolumeUnitIn(words) : null
  if (words && !named) return unreadable(`"${words}" isn’t a unit of resin volume. Use cu ft or L.`)
  const unit = named ?? columnUnit
  if (!unit)
    return unreadable(`"${text}" has no unit. Choose the unit for this column, or type it beside the number, such as ${text} cu ft.`)
  const resinVolumeFt3 = convertVolume(value, unit, 'ft3')
  if (resinVolumeFt3 < SMALLEST_FT3 || resinVolumeFt3 > LARGEST_FT3) {
    return unreadable(`${value} ${unit === 'ft3' ? 'cu ft' : 'L'} of resin does not fit a softener. Check the number and its unit.`)
  }
  return read({ resinVolumeFt3, enteredValue: value, enteredUnit: unit, asWritten: text })
}

/** The kind of resin: 8% or 10% crosslinked gel, or fine mesh. A cell "standard" means 8%, said as an assumption. */
export function readResinKind(text: string): Reading<ResinKindId> {
  const plain = text.trim().toLowerCase()
  const fine = /fine\s*-?\s*mesh|\bfine\b|\bfm\b/.test(plain)
  const ten = /(?:^|[^\d.])10\s*(?:%|percent|pct|x-?link|x\b|$)|(?:^|[^\d.])0\.10?$|high\s*cross/.test(plain)
  const eight = /(?:^|[^\d.])0?8\s*(?:%|percent|pct|x-?link|x\b|$)|^0\.08$/.test(plain)
  if (fine && !ten) return read('fine-mesh')
  if (ten && !eight && !fine) return read('gel-10')
  if (eight && !ten) return read('gel-8')
  if (/^(?:std\.?|standard|regular|normal|gel)(?:\s+(?:resin|mesh|gel|cation))*$/.test(plain))
    return read('gel-8', `"${text}" was read as 8% resin.`)
  return unreadable(`"${text}" isn’t a resin we know. Type 8%, 10% or fine mesh, or leave it blank.`)
}
