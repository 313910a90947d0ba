import { resinFt3ForGrains } from '@almanac/units/nominal-grains'
import { convertVolume } from '@almanac/units/volume'
import type { ResinVolumeUnit, TankAsRead } from './import-types.ts'
import { readResinVolume, resinVolumeUnitIn } from './read-resin.ts'
import { type Reading, read, unreadable } from './reading.ts'
import { takeTankCount } from './tank-count.ts'
import { takeTankSize, type WrittenSize } from './tank-size.ts'

const advice = 'Type it as 10x54, 48,000 grain, 1.5 cu ft or 42 L.'
const volume =
  /(?<![\d.])(\d+\s*-?\s*[¼½¾]|[¼½¾]|\d+(?:\s+|-)\d\/\d|\d\/\d|\d+(?:[.,]\d+)?)\s*-?\s*(cu\.?\s*-?\s*f(?:ee|oo)?t\b\.?|cuft\b|cf\b|ft\s*\^?\s*[3³]|cubic\s*-?\s*f(?:ee|oo)?t\b|l(?:it(?:er|re)s?|trs?|t)?\b)/i
const grains =
  /(?<![\d.,])(\d{1,3}(?:[,.\s]\d{3})+|\d+(?:\.\d+)?)\s*-?\s*(?:(k|thousand)\s*-?\s*(?:grains?|grs?\b\.?|g\b)?(?![a-z])|(kgr?s?\b|grains?|grs?\b\.?))/i

/**
 * A tank as firms write it: "10x54", `10 x 54"`, "1054", "48,000 grain", "48k", "1.5 cu ft", "42 L", "twin 14x65", or several of these together. A volume without
 * more is taken for resin, not for the empty tank, because that is how softeners are named.
 *
 * @param bareUnit the unit chosen for a bare number such as "1.5"; null refuses it
 */
export function readTank(text: string, bareUnit: ResinVolumeUnit | null = null): Reading<TankAsRead> {
  const assumptions: string[] = []
  const counted = takeTankCount(plainTank(text))
  const sized = takeTankSize(counted.rest)
  if (!sized.ok) return unreadable(`"${text}": ${sized.reason} ${advice}`)
  if (sized.assumption) assumptions.push(sized.assumption)
  let rest = sized.rest

  let resinVolumeFt3: number | null = null
  const volumeMatch = volume.exec(rest)
  if (volumeMatch) {
    const reading = readResinVolume(`${volumeMatch[1]} ${volumeMatch[2]}`, null)
    if (!reading.ok) return reading
    resinVolumeFt3 = reading.value.resinVolumeFt3
    rest = without(rest, volumeMatch)
    if (resinVolumeUnitIn(volumeMatch[2] ?? '') === 'L') assumptions.push('Liters were read as the volume of resin.')
  }

  let nominalGrains: number | null = null
  const grainsMatch = grains.exec(rest) ?? bareGrains(rest)
  if (grainsMatch) {
    const thousands = grainsMatch[2] || /^k/i.test(grainsMatch[3] ?? '')
    const written = grainsMatch[1] ?? ''
    nominalGrains = thousands ? Number(written.replace(',', '.')) * 1000 : Number(written.replace(/[,.\s](?=\d{3})/g, ''))
    if (!(nominalGrains >= 4_000 && nominalGrains <= 2_000_000))
      return unreadable(`"${text}": no softener is rated ${written} grains. ${advice}`)
    nominalGrains = Math.round(nominalGrains)
    rest = without(rest, grainsMatch)
  }

  if (!sized.size && resinVolumeFt3 === null && nominalGrains === null) return readBare(text, rest, bareUnit, counted.count)
  if (resinVolumeFt3 === null && nominalGrains !== null && !sized.size) {
    resinVolumeFt3 = resinFt3ForGrains(nominalGrains)
    assumptions.push(`The resin volume was taken from the nominal rating, 32,000 grains per cubic foot: ${round(resinVolumeFt3)} cu ft.`)
  }
  const left = rest
    .replace(noise, ' ')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
  if (/^[\d\s]+$/.test(left)) return unreadable(`"${text}": the number ${left} is not understood. ${advice}`)
  if (left) assumptions.push(`"${left}" was left unread.`)
  return read({ ...reading(text, counted.count, sized.size, nominalGrains, resinVolumeFt3), unread: left || null }, ...assumptions)
}

/** Words around a tank that say nothing about its size. */
const noise =
  /\b(?:tanks?|minerals?|resin|softeners?|units?|nominal|rated|capacity|size|frp|fib(?:er|re)glass|of|with|w|each|ea|and|per|approx|about)\b/gi

function plainTank(text: string): string {
  return text
    .toLowerCase()
    .replace(/[×✕✖╳]/g, 'x')
    .replace(/[“”″]|''|’’/g, '"')
    .replace(/[\u00a0\u202f]/g, ' ')
    .trim()
}

/** "48000" alone is a rating: no other measure of a tank has five or six digits. */
function bareGrains(rest: string): RegExpExecArray | null {
  return /^\s*(\d{2,3},?\d{3})\s*$/.exec(rest)
}

function readBare(text: string, rest: string, unit: ResinVolumeUnit | null, count: number): Reading<TankAsRead> {
  const bare = readResinVolume(rest.trim(), unit)
  if (bare.ok && unit) {
    const resinVolumeFt3 = convertVolume(bare.value.enteredValue, unit, 'ft3')
    return read(reading(text, count, null, null, resinVolumeFt3), `"${text}" was read as the volume of resin.`)
  }
  return unreadable(`"${text}" is not understood as a tank. ${advice}`)
}

function reading(
  asWritten: string,
  tankCount: number,
  size: WrittenSize | null,
  nominalGrains: number | null,
  resinVolumeFt3: number | null,
): TankAsRead {
  return {
    kind: size ? 'size' : nominalGrains !== null ? 'nominal-grains' : 'resin-volume',
    diameterIn: size?.diameterIn ?? null,
    heightIn: size?.heightIn ?? null,
    nominalGrains,
    resinVolumeFt3,
    tankCount,
    asWritten,
    unread: null,
  }
}

function without(text: string, match: RegExpExecArray): string {
  return `${text.slice(0, match.index)} ${text.slice(match.index + match[0].length)}`
}

function round(value: number): string {
  return String(Math.round(value * 100) / 100)
}
