import { type DayFill, dayFillWords } from '@almanac/records/day-plan'
import { DRIVE_PACE_KEY, type DrivePace } from '@almanac/records/drive-pace'
import { type Paper, paperWords } from '@almanac/records/paper'
import { resinKinds, resinKindWords } from '@almanac/records/resin-kind'
import { CUBIC_FOOT_BAGS, LITRE_BAGS } from '@almanac/softener/kit/bag-plan'
import type { AmountDisplay, Display } from '@almanac/units/display'
import { gpmFt2ToMH, gpmToLMin } from '@almanac/units/flow'
import { formatFlowGpm, formatHardnessGpg, formatLengthIn, formatTankSize, formatVolumeFt3, formatWeightLb } from '@almanac/units/format'
import { formatClockTime, formatDuration } from '@almanac/units/format-clock'
import { formatPercent, type NumberDisplay, showNumber } from '@almanac/units/format-number'
import { GRAMS_PER_LB, MG_PER_GRAIN } from '@almanac/units/mass'
import { formatMoney } from '@almanac/units/money'
import { packOf } from '@almanac/units/price-packs'
import { readNumber } from '@almanac/units/read-number'
import { LITRES_PER_FT3 } from '@almanac/units/volume'
import { localeWords } from './locale-words.ts'
import { paceWords } from './pace-words.ts'

/** How a firm reads its figures. */
export type FirmDisplay = Omit<Display, 'timeZone'>

type Range = { min?: number; usual: number; max?: number }
type Tank = { diameterIn: number; heightIn: number; resinFt3: Range; gravelLb: Range; openingsIn: number[] }
export type Valve = {
  label: string
  labelWords: string[]
  control: 'meter' | 'timer'
  tubeOdIn: number | null
  backwashGpm: number[]
  refillGpm: number | null
  tubeRule: string
  seals: string
}

/** g/L for 1 lb/ft³ of salt, and g/L as CaCO₃ for 1 kgr/ft³ of capacity. */
export const G_L_PER_LB_FT3 = GRAMS_PER_LB / LITRES_PER_FT3
export const G_L_PER_KGR_FT3 = MG_PER_GRAIN / LITRES_PER_FT3
/** Metres an hour for 1 gpm/ft². */
export const M_H_PER_GPM_FT2 = gpmFt2ToMH(1)

const number = (value: number, display: NumberDisplay, decimals = 2) => showNumber(value, decimals, display) ?? ''

const FIXED: Record<string, string> = {
  bags: 'Bags in stock',
  ...Object.fromEntries(resinKinds.map((kind) => [`curve:${kind}`, `Salt and capacity, ${resinKindWords[kind]}`])),
  'allowance:iron': 'Iron allowance',
  'allowance:manganese': 'Manganese allowance',
  'gravel-from-ft3': 'Use gravel from this volume',
  'outlet-limit-gpg': 'Outlet hardness after a rebed',
  'backwash:expansion': 'Backwash expansion',
  'backwash:gpm-ft2': 'Backwash flow',
  reserve: 'Reserve capacity',
  'price:salt-per-lb': 'Price of salt',
  'price:water-per-gal': 'Price of water',
  [DRIVE_PACE_KEY]: 'Your crews’ driving pace',
  reminderLeadDays: 'Reminder, days before the due window',
  reminderNotices: 'Notices for one due window',
  reminderAgainDays: 'Days until the next notice',
  sendFrom: 'Messages go out from',
  sendUntil: 'Messages go out until',
  rebedsPerMonth: 'Rebeds a month, while nobody is on day sheets',
  dayStart: 'Workday starts',
  dayEnd: 'Workday ends',
  plannedRebedMinor: 'A planned rebed costs',
  failureMinor: 'A failure costs',
  beadsMinor: 'Beads in the plumbing cost',
  overtimeMinorPerHour: 'An hour of overtime costs',
  riskLimit: 'Highest risk for a bed',
  poolFits: 'Learn together with other companies',
  lunchMinutes: 'Lunch',
  lunchFrom: 'Lunch starts from',
  lunchUntil: 'Lunch starts until',
  inHandMinutes: 'Time in hand at a day’s end',
  dayFill: 'Days are planned',
  holidayArea: 'Public holidays of',
  holidaysWorked: 'Public holidays you work on',
  yardLatitude: 'Yard, latitude',
  yardLongitude: 'Yard, longitude',
  name: 'Company name',
  telephone: 'Telephone for customers',
  headAddress: 'Address on papers',
  headMail: 'Email on papers',
  headLicence: 'License on papers',
  logo: 'Logo on papers',
  paper: 'Paper',
  locale: 'Numbers, money, dates and times',
}

/** What a figure or setting is called. A valve card by its own name, where one is given. */
export function figureName(key: string, display: AmountDisplay, value?: unknown): string {
  const tank = key.match(/^tank:([\d.]+)x([\d.]+)$/)
  if (tank) return `${formatTankSize(readNumber(tank[1] ?? ''), readNumber(tank[2] ?? ''), display)} tank`
  if (key.startsWith('valve:')) return (value as Valve | null)?.label ?? 'Valve'
  return FIXED[key] ?? key
}

/** What the dialog that sets a figure is titled by: what it edits, or that it adds a tank or a valve. A price without a value is no new valve. */
export function dialogTitle(key: string, value: unknown, display: AmountDisplay): string {
  if (key === 'tank:new') return 'Add a tank'
  return key.startsWith('valve:') && value === null ? 'Add a valve' : figureName(key, display, value)
}

function range({ min, usual, max }: Range, show: (value: number) => string): string {
  return min === undefined || max === undefined || min === max ? show(usual) : `${show(usual)} (${show(min)} to ${show(max)})`
}

const percent = (share: unknown, display: NumberDisplay) => formatPercent(share as number, display, 1)
const flowFt2 = (value: number, display: AmountDisplay) =>
  display.unitSystem === 'us' ? `${number(value, display, 1)} gpm/ft²` : `${number(value * M_H_PER_GPM_FT2, display, 1)} m/h`

/** Points of a curve: "5 lb/ft³ gives 20 kgr/ft³". */
function curveWords(points: [number, number][], display: AmountDisplay): string {
  const us = display.unitSystem === 'us'
  const one = ([salt, capacity]: [number, number]) =>
    us
      ? `${number(salt, display, 1)} → ${number(capacity, display, 1)}`
      : `${number(salt * G_L_PER_LB_FT3, display, 0)} → ${number(capacity * G_L_PER_KGR_FT3, display, 1)}`
  return `${points.map(one).join(', ')} ${us ? '(lb/ft³ of salt → kgr/ft³)' : '(g/L of salt → g/L as CaCO₃)'}`
}

function valveWords({ control, tubeOdIn, backwashGpm, refillGpm }: Valve, display: AmountDisplay): string {
  const each = backwashGpm.map((flow) => (display.unitSystem === 'us' ? number(flow, display, 2) : number(gpmToLMin(flow), display, 1)))
  const flows = each.length === 0 ? null : `backwash ${each.join(', ')} ${display.unitSystem === 'us' ? 'gpm' : 'L/min'}`
  return [
    control,
    tubeOdIn === null
      ? null
      : `tube ${display.unitSystem === 'us' ? `${number(tubeOdIn, display, 3)} in` : formatLengthIn(tubeOdIn, display)} outside`,
    flows,
    refillGpm === null
      ? null
      : `refill ${display.unitSystem === 'us' ? `${number(refillGpm, display, 3)} gpm` : formatFlowGpm(refillGpm, display)}`,
  ]
    .filter(Boolean)
    .join(', ')
}

/** Bags a firm without its own would use. */
export const usualBags = (display: AmountDisplay): number[] =>
  (display.unitSystem === 'metric' ? LITRE_BAGS : CUBIC_FOOT_BAGS).map((bag) => bag.volumeFt3)

const linesInOne = (value: unknown) => (value as string).split('\n').join(', ')

const WORDS: Record<string, (value: unknown, display: FirmDisplay) => string> = {
  bags: (value, display) => (value as number[]).map((size) => formatVolumeFt3(size, display)).join(', '),
  'allowance:iron': (value, display) => `${number(value as number, display)} gpg per mg/L`,
  'allowance:manganese': (value, display) => `${number(value as number, display)} gpg per mg/L`,
  'gravel-from-ft3': (value, display) => formatVolumeFt3(value as number, display),
  'outlet-limit-gpg': (value, display) => `below ${formatHardnessGpg(value as number, display)}`,
  'backwash:expansion': percent,
  'backwash:gpm-ft2': (value, display) => range(value as Range, (flow) => flowFt2(flow, display)),
  reserve: (value, display) => {
    const reserve = value as { kind: string; days?: number; share?: number }
    if (reserve.kind === 'share') return `${percent(reserve.share, display)} of the capacity`
    return reserve.days === 1 ? 'one day’s use' : `${number(reserve.days ?? 0, display)} days’ use`
  },
  [DRIVE_PACE_KEY]: (value, display) => paceWords(value as DrivePace, display),
  riskLimit: percent,
  dayStart: (value, display) => formatClockTime(value as string, display),
  dayEnd: (value, display) => formatClockTime(value as string, display),
  sendFrom: (value, display) => formatClockTime(value as string, display),
  sendUntil: (value, display) => formatClockTime(value as string, display),
  poolFits: (value) => (value ? 'on' : 'off'),
  lunchMinutes: (value, display) => (value === 0 ? 'none' : formatDuration(value as number, display)),
  lunchFrom: (value, display) => formatClockTime(value as string, display),
  lunchUntil: (value, display) => formatClockTime(value as string, display),
  inHandMinutes: (value, display) => (value === 0 ? 'none' : formatDuration(value as number, display)),
  dayFill: (value) => dayFillWords[value as DayFill],
  holidayArea: String,
  holidaysWorked: (value) => (value as string[]).join(', ') || 'none',
  locale: (value) => localeWords(value as string),
  name: String,
  telephone: String,
  headAddress: linesInOne,
  headMail: String,
  headLicence: linesInOne,
  logo: () => 'set',
  paper: (value) => paperWords[value as Paper],
}

/** A figure's or setting's value as a person reads it. */
export function figureWords(key: string, value: unknown, display: FirmDisplay): string {
  if (value === null || value === undefined) return 'not set'
  const pack = packOf(key, display.unitSystem)
  if (pack) return pack.words(value as number, display)
  const words = WORDS[key]
  if (words) return words(value, display)
  if (key.startsWith('curve:')) return curveWords(value as [number, number][], display)
  if (key.startsWith('valve:')) return valveWords(value as Valve, display)
  if (key.startsWith('tank:')) {
    const { resinFt3, gravelLb } = value as Tank
    const gravel = gravelLb.usual === 0 ? 'no gravel' : `${range(gravelLb, (lb) => formatWeightLb(lb, display))} of gravel`
    return `${range(resinFt3, (ft3) => formatVolumeFt3(ft3, display))} of resin, ${gravel}`
  }
  return /Minor/.test(key) ? formatMoney(value as number, display) : String(value)
}
