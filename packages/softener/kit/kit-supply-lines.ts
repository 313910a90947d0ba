import type { AmountDisplay } from '@almanac/units/display'
import { formatDoseFlOz, formatLengthIn } from '@almanac/units/format'
import { formatPercent } from '@almanac/units/format-number'
import { COMMON_PRACTICE } from '@almanac/units/sourced'
import { GRAVEL_BULK_LB_FT3 } from '../tanks/bed-levels.ts'
import type { KitLine } from './kit-types.ts'

export type SupplyInput = {
  resinFt3: number
  gravelOutLb: number
  bleachPercent?: number | null
  openingIn?: number | null
  /** What the valve's card says of its seals. */
  valveSeals?: string | null
  display: AmountDisplay
}

/** Old resin is swollen and wet: this much more than the new volume; common practice, no source. */
const SPENT_SWELLING = 1.1
/** What one 5-gallon pail is filled with so that one person can carry it, ft³; common practice, no source. */
export const PAIL_FILL_FT3 = 0.45
/** Bleach for polystyrene resin, fl oz of 5.25% sodium hypochlorite per ft³: typical manual. */
const BLEACH_FL_OZ_FT3 = 1.2
const BLEACH_STRENGTH_PERCENT = 5.25
/** Household bleach sold today, % sodium hypochlorite; common practice, no source. */
export const USUAL_BLEACH_PERCENT = 8.25
const TYPICAL_MANUAL = 'typical manual'

/** Volume of old resin to take away, ft³. */
export function spentResinFt3(resinFt3: number): number {
  return resinFt3 * SPENT_SWELLING
}

/** Dose of bleach of a given strength, fl oz: 1.2 per ft³ at 5.25%, less in proportion when stronger. */
export function sanitiserDoseFlOz(resinFt3: number, bleachPercent: number): number {
  return (BLEACH_FL_OZ_FT3 * resinFt3 * BLEACH_STRENGTH_PERCENT) / bleachPercent
}

/** Cap, funnel, seals, grease, sanitiser, containers and strainer. */
export function supplyLines(input: SupplyInput): KitLine[] {
  const opening = input.openingIn == null ? '' : ` for the ${formatLengthIn(input.openingIn, input.display)} opening`
  return [
    piece(
      'tube-cap',
      'Cap for the distributor tube',
      'Keeps every bead out of the tube while filling. Counted in, and counted out before the valve goes on.',
      true,
    ),
    piece('fill-funnel', `Filling funnel${opening}`, 'Fills around the tube without moving it.', true),
    {
      ...piece(
        'seals',
        'Seals: tank neck, tube and valve O-rings',
        `Old seals take a set; they are renewed when the valve comes off.${input.valveSeals ? ` This valve: ${input.valveSeals}` : ''}`,
        false,
      ),
      unit: 'set',
    },
    piece('silicone-grease', 'Silicone grease for drinking water, small tube', 'Silicone only: petroleum grease swells the seals.', false),
    sanitiserLine(input),
    containerLine(input),
    piece('drain-strainer', 'Strainer for the drain', 'Catches beads in the first flow, so that none reach the drain.', true),
  ]
}

function piece(item: KitLine['item'], label: string, why: string, toReturn: boolean): KitLine {
  return {
    item,
    label,
    quantity: 1,
    unit: 'piece',
    text: `1 × ${label}`,
    why,
    source: COMMON_PRACTICE,
    weightLb: null,
    volumeFt3: null,
    toReturn,
  }
}

function sanitiserLine({ resinFt3, bleachPercent, display }: SupplyInput): KitLine {
  const usable = bleachPercent != null && bleachPercent >= 1 && bleachPercent <= 15
  const percent = usable ? bleachPercent : USUAL_BLEACH_PERCENT
  const dose = Math.max(0.1, Math.round(sanitiserDoseFlOz(resinFt3, percent) * 10) / 10)
  return {
    item: 'sanitiser',
    label: `Plain bleach, ${formatPercent(percent / 100, display, 2)}`,
    quantity: dose,
    unit: 'fl oz',
    text: `${formatDoseFlOz(dose, display)} of plain ${formatPercent(percent / 100, display, 2)} bleach`,
    why: `Sanitises the new bed before the full regeneration${usable ? '' : '; strength assumed, read the bottle'}. Never together with iron cleaner: toxic gas.`,
    source: TYPICAL_MANUAL,
    weightLb: null,
    volumeFt3: null,
    toReturn: false,
  }
}

function containerLine({ resinFt3, gravelOutLb }: SupplyInput): KitLine {
  const out = spentResinFt3(resinFt3) + gravelOutLb / GRAVEL_BULK_LB_FT3
  const count = Math.max(1, Math.ceil(out / PAIL_FILL_FT3 - 1e-9))
  return {
    item: 'spent-resin-container',
    label: 'Pail with lid, 5 gal, for spent resin',
    quantity: count,
    unit: 'piece',
    text: `${count} × pail with lid, 5 gal (19 L)`,
    why: 'Old resin and gravel, each pail filled little enough for one person to carry. Where they may go is a local rule.',
    source: COMMON_PRACTICE,
    weightLb: null,
    volumeFt3: null,
    toReturn: true,
  }
}
