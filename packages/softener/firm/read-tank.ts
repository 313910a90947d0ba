import { GRAVEL_BULK_LB_FT3 } from '../tanks/bed-levels.ts'
import { TANK_LIMITS, tankShell } from '../tanks/tank-geometry.ts'
import type { TankSize, UsualRange } from '../tanks/tank-sizes.ts'
import { listWithin, numberWithin, readFields, WrongFigure } from './read-value.ts'

/** What a firm's own figure says of its source. */
export const FIRM_SOURCE = 'your company’s own value'

/** The key of a tank's row: `tank:10x54`. */
export function tankKey(tank: { diameterIn: number; heightIn: number }): string {
  return `tank:${tank.diameterIn}x${tank.heightIn}`
}

function readRange(value: unknown, what: string, most: number, least: number, unit: string): UsualRange {
  const fields = readFields(value, what)
  const usual = numberWithin(fields.usual, what, { least, most, unit })
  const from = fields.min === undefined ? usual : numberWithin(fields.min, `The least of ${lower(what)}`, { least, most, unit })
  const to = fields.max === undefined ? usual : numberWithin(fields.max, `The most of ${lower(what)}`, { least, most, unit })
  if (!(from <= usual && usual <= to)) throw new WrongFigure(`${what}: the usual ${usual} ${unit} must lie between ${from} and ${to}.`)
  return { min: from, usual, max: to }
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1)

/** A row of the tank table as the firm sends it. Throws `WrongFigure`. */
export function ownTank(key: string, value: unknown): TankSize {
  const fields = readFields(value, 'The tank')
  const { minDiameterIn, maxDiameterIn, minHeightIn, maxHeightIn } = TANK_LIMITS
  const diameterIn = numberWithin(fields.diameterIn, 'A tank diameter', { least: minDiameterIn, most: maxDiameterIn, unit: 'in' })
  const heightIn = numberWithin(fields.heightIn, 'A tank height', { least: minHeightIn, most: maxHeightIn, unit: 'in' })
  if (heightIn < diameterIn)
    throw new WrongFigure(`The tank would be wider (${diameterIn} in) than high (${heightIn} in); check which is which.`)
  if (tankKey({ diameterIn, heightIn }) !== key) throw new WrongFigure('The tank’s size doesn’t match its row.')
  const { volumeFt3 } = tankShell(diameterIn, heightIn)
  const resinFt3 = readRange(fields.resinFt3, 'Resin', 500, 0.01, 'ft³')
  const gravelLb = readRange(fields.gravelLb, 'Gravel', 20_000, 0, 'lb')
  if (resinFt3.max + gravelLb.max / GRAVEL_BULK_LB_FT3 > volumeFt3)
    throw new WrongFigure(`A ${diameterIn} × ${heightIn} in tank holds ${volumeFt3.toFixed(2)} ft³: this much resin and gravel don’t fit.`)
  const openings = listWithin(fields.openingsIn, 'Openings', 1, 4)
  const openingsIn = openings.map((opening) => numberWithin(opening, 'An opening', { least: 1, most: 12, unit: 'in' }))
  return { diameterIn, heightIn, resinFt3, gravelLb, openingsIn, source: FIRM_SOURCE }
}

/** The table with one row replaced or added, in order of diameter, then height. */
export function withTank(table: readonly TankSize[], tank: TankSize): TankSize[] {
  const others = table.filter((row) => row.diameterIn !== tank.diameterIn || row.heightIn !== tank.heightIn)
  return [...others, tank].sort((a, b) => a.diameterIn - b.diameterIn || a.heightIn - b.heightIn)
}
