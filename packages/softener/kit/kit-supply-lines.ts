import { formatLengthIn } from '@almanac/units/format'
import { formatPercent, showWhole } from '@almanac/units/format-number'
import type { Words } from '@almanac/words/words'
import { GRAVEL_BULK_LB_FT3 } from '../tanks/bed-levels.ts'
import type { KitLine } from './kit-types.ts'
import { sanitiser, sanitiserText } from './sanitiser.ts'
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
/** What the steps need beside the materials, and comes back; common practice, no source. */
export const BESIDES = ['protection', 'tools', 'tests', 'spares'] as const

/** Volume of old resin to take away, ft³. */
export function spentResinFt3(resinFt3: number): number {
  return resinFt3 * SPENT_SWELLING
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
