import type { AmountName } from './amount-names.ts'
import {
  CONCENTRATION,
  type Dimension,
  FLOW,
  HARDNESS,
  LENGTH,
  MASS,
  oneUnit,
  PRESSURE,
  SMALL_LENGTH,
  TEMPERATURE,
  VOLUME,
} from './dimensions.ts'
import { COMMON_PRACTICE } from './sourced.ts'

/**
 * What an amount may be, in the unit it is kept in. Beyond `least` and `most` it is a slip and refused; outside `usual` it is asked back, and stands
 * with a reason. `source` says where the bounds come from.
 */
export type AmountRule = {
  /** What it is called in sentences. */
  name: AmountName
  dimension: Dimension
  least: number
  most: number
  usual?: readonly [number, number]
  /** Counted, not measured. */
  whole?: boolean
  /** Decimals that its unit has, where it has no more, as money. */
  decimals?: number
  /** Zero is nothing to record: more than `least` is wanted. */
  above?: boolean
  /** Such as one would type. */
  example: string
  source: string
}

const PERCENT = oneUnit('%')
const rule = (
  name: AmountName,
  dimension: Dimension,
  [least, most]: readonly [number, number],
  usual: readonly [number, number] | undefined,
  example: string,
  source: string = COMMON_PRACTICE,
): AmountRule => ({ name, dimension, least, most, usual, example, source })

const count = (
  name: AmountName,
  unit: string,
  bounds: readonly [number, number],
  example: string,
  usual?: readonly [number, number],
): AmountRule => ({
  ...rule(name, oneUnit(unit), bounds, usual, example),
  whole: true,
})

/** Every kind of amount that people type, but money and what the stores count, whose units are the company's own. */
export const AMOUNT_KINDS = {
  hardness: rule(
    'hardness',
    HARDNESS,
    [0, 200],
    [0, 60],
    '18',
    `impossible: ${COMMON_PRACTICE}; usual: numbers above 60 are mostly mg/L, ${COMMON_PRACTICE}`,
  ),
  chlorine: rule(
    'chlorine',
    CONCENTRATION,
    [0, 20],
    [0, 4],
    '1.2',
    '40 CFR 141.65: at most 4.0 mg/L as a yearly average of free chlorine or chloramine',
  ),
  iron: rule('iron', CONCENTRATION, [0, 100], [0, 15], '0.3'),
  manganese: rule('manganese', CONCENTRATION, [0, 50], [0, 5], '0.05'),
  ph: rule('ph', oneUnit(''), [0, 14], [5, 10], '7.4', `the scale of pH; usual: ${COMMON_PRACTICE}`),
  pressure: rule(
    'pressure',
    PRESSURE,
    [0, 300],
    [20, 80],
    '60',
    'above 80 psi the model plumbing codes require a regulator; the rest common practice, no source',
  ),
  pressureDrop: rule(
    'pressureDrop',
    PRESSURE,
    [0, 150],
    [0, 25],
    '8',
    'NSF/ANSI 44: at most 15 psi at the rated service flow, of a new bed; the rest common practice, no source',
  ),
  resin: { ...rule('resin', VOLUME, [0, 100], [0.25, 20], '1.5'), above: true },
  gravel: rule('gravel', MASS, [0, 5000], [0, 400], '18'),
  tube: { ...rule('tube', LENGTH, [4, 160], [12, 110], '54') },
  depth: rule('depth', LENGTH, [0, 160], [0, 100], '30'),
  backwash: { ...rule('backwash', FLOW, [0.1, 500], [0.5, 60], '2.4') },
  saltDose: rule('saltDose', MASS, [0, 1000], [1, 100], '9'),
  fluidOunces: rule('cleaner', oneUnit('fl oz'), [0, 2000], [0, 128], '8'),
  pails: count('pails', 'pails', [0, 500], '3', [0, 40]),
  people: count('people', 'people', [1, 100_000], '4', [1, 500]),
  waterTemperature: rule(
    'temperature',
    TEMPERATURE,
    [32, 110],
    undefined,
    '55',
    'liquid water, and at most what a household resin bears: common practice, no source',
  ),
  capacityShare: rule('capacity', PERCENT, [0, 150], [0, 110], '60'),
  moistureShare: rule(
    'moisture',
    PERCENT,
    [0, 100],
    [30, 80],
    '48',
    'new resin 44 to 48%: typical data sheets; the rest common practice, no source',
  ),
  share: rule('share', PERCENT, [0, 100], undefined, '60'),
  saltShare: rule('share', PERCENT, [0, 1000], undefined, '60'),
  riskShare: rule('risk', PERCENT, [1, 100], undefined, '10'),
  leadDays: count('leadTime', 'days', [0, 365], '14'),
  reminderDays: count('leadTime', 'days', [0, 730], '40'),
  notices: count('notices', 'notices', [1, 3], '2'),
  againDays: count('leadTime', 'days', [7, 365], '30'),
  rebedsPerMonth: count('rebeds', 'rebeds', [0, 100_000], '40'),
  breakMinutes: count('break', 'min', [5, 240], '30'),
  latitude: rule('latitude', oneUnit('°'), [-90, 90], undefined, '41.7106', 'definition of latitude'),
  longitude: rule('longitude', oneUnit('°'), [-180, 180], undefined, '-88.4215', 'definition of longitude'),
  vehicleRoom: rule('room', VOLUME, [0, 2000], [0, 400], '40'),
  payload: rule('payload', MASS, [0, 40_000], [0, 10_000], '1,200'),
  // What a clue to a tank may be is decided, clue by clue, where the tank is told from them.
  tankMeasure: rule('measure', { ...LENGTH, units: ['in', 'cm', 'mm', 'ft', 'm'] }, [0, 100_000], undefined, '31½'),
  // Of a softener's mineral tank, as a crew finds it; listed ones run from 6 × 13 to 63 × 86 in.
  tankDiameter: rule('measure', LENGTH, [4, 72], [6, 36], '10'),
  tankHeight: rule('measure', LENGTH, [10, 120], [13, 90], '54'),
  figureLength: rule('length', LENGTH, [0, 400], undefined, '10'),
  figureDiameter: rule('diameter', SMALL_LENGTH, [0, 100], undefined, '1.05'),
  figureVolume: rule('volume', VOLUME, [0, 500], undefined, '1.5'),
  figureMass: rule('weight', MASS, [0, 20_000], undefined, '18'),
  figureFlow: rule('flow', FLOW, [0, 500], undefined, '2.4'),
  fixtures: count('number', '', [0, 200], '2'),
} satisfies Record<string, AmountRule>

export type AmountKind = keyof typeof AMOUNT_KINDS

/** What the stores count, in the unit of the item: bags, feet, pieces. */
export const stockRule = (unit: string): AmountRule => ({
  ...rule('quantity', oneUnit(unit), [0, 1_000_000], [0, 5000], '4'),
})

/** Money in the currency's own unit, with the decimals that it has (ISO 4217). */
export const moneyRule = (currency: string, decimals: number, most = 20_000_000): AmountRule => ({
  ...rule('money', oneUnit(currency), [0, most], undefined, decimals === 0 ? '1,200' : '1,200.50'),
  decimals,
})

/** An amount by its kind, or the rule itself. */
export const ruleOf = (kind: AmountKind | AmountRule): AmountRule => (typeof kind === 'string' ? AMOUNT_KINDS[kind] : kind)
