import { readPlainNumber } from './read-number.ts'
import { type Reading, read, unreadable } from './reading.ts'

const LIMIT = { latitude: 90, longitude: 180 }
const SIDES = { latitude: { plus: 'N', minus: 'S' }, longitude: { plus: 'E', minus: 'W' } }

/** Degrees north or east (WGS 84): "41.8781", "-87.63", "87.63 W", "41,8781°". Degrees with minutes are refused rather than guessed. */
export function readDegrees(text: string, which: 'latitude' | 'longitude'): Reading<number> {
  const match = /^([+-]?[\d.,]+)\s*°?\s*([NSEW])?$/i.exec(text.trim())
  const side = match?.[2]?.toUpperCase()
  const { plus, minus } = SIDES[which]
  const degrees = match?.[1] ? readPlainNumber(match[1]) : null
  const fits =
    degrees !== null && Math.abs(degrees) <= LIMIT[which] && (side === undefined || side === plus || (side === minus && degrees >= 0))
  if (!fits)
    return unreadable(`"${text}" is no ${which} in degrees. Type a number from -${LIMIT[which]} to ${LIMIT[which]}, or leave it blank.`)
  return read(side === minus ? -degrees : degrees)
}
