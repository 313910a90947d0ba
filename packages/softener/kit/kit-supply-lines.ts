import { formatDoseFlOz, formatLengthIn } from '@almanac/units/format'
import { formatPercent, showWhole } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'
import { GRAVEL_BULK_LB_FT3 } from '../tanks/bed-levels.ts'
import type { KitLine } from './kit-types.ts'
import type { Speaking } from './speaking.ts'

export type SupplyInput = Speaking & {
  resinFt3: number
  gravelOutLb: number
  bleachPercent?: number | null
  openingIn?: number | null
  /** What the valve's card says of its seals. */
  valveSeals?: string | null
}

/** Old resin is swollen and wet: this much more than the new volume; common practice, no source. */
const SPENT_SWELLING = 1.1
/** What one 5-gallon pail is filled with so that one person can carry it, ft³; common practice, no source. */
const PAIL_FILL_FT3 = 0.45
/** Bleach for polystyrene resin, fl oz of 5.25% sodium hypochlorite per ft³: typical manual. */
const BLEACH_FL_OZ_FT3 = 1.2
const BLEACH_STRENGTH_PERCENT = 5.25
/** Household bleach sold today, % sodium hypochlorite; common practice, no source. */
const USUAL_BLEACH_PERCENT = 8.25

/** What the steps need beside the materials, and comes back; common practice, no source. */
export const BESIDES = ['protection', 'tools', 'tests', 'spares'] as const

/** Volume of old resin to take away, ft³. */
export function spentResinFt3(resinFt3: number): number {
  return resinFt3 * SPENT_SWELLING
}

/** The dose to pour, and its strength, as people read them: "1.1 fl oz of plain 8.25% bleach". `bleachPercent` where the bottle at hand is known. */
export function sanitiserText(resinFt3: number, bleachPercent: number | null | undefined, { display, words }: Speaking): string {
  const { dose, strength } = sanitiser(resinFt3, bleachPercent)
  return words('bleachText', { dose: formatDoseFlOz(dose, display), percent: formatPercent(strength / 100, display, 2) })
}

function sanitiser(resinFt3: number, bleachPercent: number | null | undefined) {
  const usable = bleachPercent != null && bleachPercent >= 1 && bleachPercent <= 15
  const strength = usable ? bleachPercent : USUAL_BLEACH_PERCENT
  return { usable, strength, dose: Math.max(0.1, Math.round(sanitiserDoseFlOz(resinFt3, strength) * 10) / 10) }
}

/** Dose of bleach of a given strength, fl oz: 1.2 per ft³ at 5.25%, less in proportion when stronger. */
export function sanitiserDoseFlOz(resinFt3: number, bleachPercent: number): number {
  return (BLEACH_FL_OZ_FT3 * resinFt3 * BLEACH_STRENGTH_PERCENT) / bleachPercent
}

/** Cap, funnel, seals, grease, sanitiser, containers and strainer. */
export function supplyLines(input: SupplyInput): KitLine[] {
  const { words, display, openingIn, valveSeals } = input
  const funnel = openingIn == null ? words('funnel') : words('funnelFor', { opening: formatLengthIn(openingIn, display) })
  const sealsWhy = valveSeals ? words('sealsWhyValve', { seals: valveSeals }) : words('sealsWhy')
  return [
    piece('tube-cap', words('cap'), words('capWhy'), true, words),
    piece('fill-funnel', funnel, words('funnelWhy'), true, words),
    { ...piece('seals', words('seals'), sealsWhy, false, words), unit: 'set' },
    piece('silicone-grease', words('grease'), words('greaseWhy'), false, words),
    sanitiserLine(input),
    containerLine(input),
    piece('drain-strainer', words('strainer'), words('strainerWhy'), true, words),
    ...BESIDES.map((item) => ({ ...piece(item, words(item), words(`${item}Why`), true, words), text: words(item) })),
  ]
}

function piece(item: KitLine['item'], label: string, why: string, toReturn: boolean, words: Words<'kit'>): KitLine {
  return {
    item,
    label,
    quantity: 1,
    unit: 'piece',
    text: words('piece', { part: label }),
    why,
    source: words('source/practice'),
    weightLb: null,
    volumeFt3: null,
    toReturn,
  }
}

function sanitiserLine({ resinFt3, bleachPercent, display, words }: SupplyInput): KitLine {
  const { usable, strength, dose } = sanitiser(resinFt3, bleachPercent)
  const percent = formatPercent(strength / 100, display, 2)
  return {
    item: 'sanitiser',
    label: words('bleach', { percent }),
    quantity: dose,
    unit: 'fl oz',
    text: sanitiserText(resinFt3, bleachPercent, { display, words }),
    why: words(usable ? 'bleachWhy' : 'bleachWhyAssumed'),
    source: words('source/manual'),
    weightLb: null,
    volumeFt3: null,
    toReturn: false,
  }
}

function containerLine({ resinFt3, gravelOutLb, display, words }: SupplyInput): KitLine {
  const out = spentResinFt3(resinFt3) + gravelOutLb / GRAVEL_BULK_LB_FT3
  const count = Math.max(1, Math.ceil(out / PAIL_FILL_FT3 - 1e-9))
  return {
    item: 'spent-resin-container',
    label: words('pail'),
    quantity: count,
    unit: 'piece',
    text: words('pailText', { count: showWhole(count, display) }),
    why: words('pailWhy'),
    source: words('source/practice'),
    weightLb: null,
    volumeFt3: null,
    toReturn: true,
  }
}
