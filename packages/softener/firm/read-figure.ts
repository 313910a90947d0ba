import { type ResinKindId, resinKinds } from '@almanac/records/resin-kind'
import { type Refusal, refuse } from '@almanac/units/result'
import type { FirmFigures } from './firm-figures.ts'
import { readBags, readCurve } from './read-materials.ts'
import { ownTank, withTank } from './read-tank.ts'
import { numberWithin, readFields, WrongFigure } from './read-value.ts'
import { ownValve, withValve } from './read-valve.ts'

/** Puts one figure in its place. */
type Change = (figures: FirmFigures) => FirmFigures
type Reader = (value: unknown) => Change

/** What each resin softens for its salt: `curve:gel-8` and so on. */
export const CURVE_KEYS = resinKinds.map((kind) => `curve:${kind}` as const)

/** Keys of figures that are one number or a small group; tanks and valves have a key a row: `tank:10x54`, `valve:<id>`. */
export const PLAIN_KEYS = [
  'bags',
  ...CURVE_KEYS,
  'allowance:iron',
  'allowance:manganese',
  'gravel-from-ft3',
  'outlet-limit-gpg',
  'backwash:expansion',
  'backwash:gpm-ft2',
  'reserve',
  'price:salt-per-lb',
  'price:water-per-gal',
] as const
type CurveKey = (typeof CURVE_KEYS)[number]
export type PlainKey = (typeof PLAIN_KEYS)[number]

const curve =
  (kind: ResinKindId): Reader =>
  (value) =>
  (figures) => ({ ...figures, curves: { ...figures.curves, [kind]: readCurve(kind, figures.curves[kind], value) } })

const READERS: Readonly<Record<PlainKey, Reader>> = {
  bags: (value) => (figures) => ({ ...figures, bagSizes: readBags(value) }),
  ...(Object.fromEntries(resinKinds.map((kind) => [`curve:${kind}`, curve(kind)])) as Record<CurveKey, Reader>),
  'allowance:iron': (value) => {
    const ironGpgPerMgL = numberWithin(value, 'An iron allowance', { least: 0, most: 20, unit: 'gpg per mg/L' })
    return (figures) => ({ ...figures, allowance: { ...figures.allowance, ironGpgPerMgL } })
  },
  'allowance:manganese': (value) => {
    const manganeseGpgPerMgL = numberWithin(value, 'A manganese allowance', { least: 0, most: 20, unit: 'gpg per mg/L' })
    return (figures) => ({ ...figures, allowance: { ...figures.allowance, manganeseGpgPerMgL } })
  },
  'gravel-from-ft3': (value) => {
    const gravelFromFt3 = numberWithin(value, 'The resin volume for gravel', { least: 0, most: 500, unit: 'ft³' })
    return (figures) => ({ ...figures, gravelFromFt3 })
  },
  'outlet-limit-gpg': (value) => {
    const outletLimitGpg = numberWithin(value, 'The hardness at the valve outlet', { least: 0.1, most: 10, unit: 'gpg' })
    return (figures) => ({ ...figures, outletLimitGpg })
  },
  'backwash:expansion': (value) => {
    const wantedExpansion = numberWithin(value, 'The expansion wanted', { least: 0.1, most: 1.5, unit: 'of the bed’s depth' })
    return (figures) => ({ ...figures, backwash: { ...figures.backwash, wantedExpansion } })
  },
  'backwash:gpm-ft2': (value) => {
    const fields = readFields(value, 'The backwash')
    const bounds = { least: 0.5, most: 30, unit: 'gpm/ft²' }
    const [min, usual, max] = (['min', 'usual', 'max'] as const).map((name) => numberWithin(fields[name], 'A backwash flow', bounds))
    if (min === undefined || usual === undefined || max === undefined || min > usual || usual > max)
      throw new WrongFigure('The usual backwash must be between the lowest and the highest.')
    return (figures) => ({ ...figures, backwash: { ...figures.backwash, gpmFt2: { min, usual, max } } })
  },
  reserve: (value) => {
    const { kind, days, share } = readFields(value, 'The reserve')
    if (kind === 'days') {
      const reserve = { kind, days: numberWithin(days, 'The reserve', { least: 0, most: 7, unit: 'days' }) } as const
      return (figures) => ({ ...figures, reserve })
    }
    if (kind !== 'share') throw new WrongFigure('The reserve is a number of days or a share of the capacity. Say which.')
    const reserve = { kind, share: numberWithin(share, 'The reserve', { least: 0, most: 0.8, unit: 'of the capacity' }) } as const
    return (figures) => ({ ...figures, reserve })
  },
  'price:salt-per-lb': (value) => {
    const saltPriceMinorPerLb = numberWithin(value, 'The price of salt', { least: 0, most: 100_000, unit: 'minor units a pound' })
    return (figures) => ({ ...figures, saltPriceMinorPerLb })
  },
  'price:water-per-gal': (value) => {
    const waterPriceMinorPerGal = numberWithin(value, 'The price of water', { least: 0, most: 100_000, unit: 'minor units a gallon' })
    return (figures) => ({ ...figures, waterPriceMinorPerGal })
  },
}

const isPlain = (key: string): key is PlainKey => PLAIN_KEYS.some((plain) => plain === key)

function changeFor(key: string, value: unknown): Change {
  if (isPlain(key)) return READERS[key](value)
  if (key.startsWith('tank:')) {
    const tank = ownTank(key, value)
    return (figures) => ({ ...figures, tanks: withTank(figures.tanks, tank) })
  }
  if (key.startsWith('valve:') && key.length > 'valve:'.length) {
    const card = ownValve(key.slice('valve:'.length), value)
    return (figures) => ({ ...figures, valves: withValve(figures.valves, card) })
  }
  throw new WrongFigure(`There’s no value called “${key.slice(0, 60)}”.`)
}

/** The figures with one of them set, or the sentence that says why it cannot stand. Never throws for any value. */
export function setFigure(figures: FirmFigures, key: string, value: unknown): { ok: true; figures: FirmFigures } | Refusal {
  try {
    return { ok: true, figures: changeFor(key, value)(figures) }
  } catch (error) {
    if (error instanceof WrongFigure) return refuse(error.message)
    throw error
  }
}
