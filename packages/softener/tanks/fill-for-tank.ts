import { formatTankSize } from '@almanac/units/format'
import { quoteNumber, showNumber } from '@almanac/units/format-number'
import { resinFt3ForGrains } from '@almanac/units/nominal-grains'
import { ok, type Result, refuse } from '@almanac/units/result'
import { COMMON_PRACTICE } from '@almanac/units/sourced'
import type { Words } from '@almanac/words/words'
import { sourceWords } from '../kit/source-words.ts'
import type { Speaking } from '../kit/speaking.ts'
import { GRAVEL_BULK_LB_FT3 } from './bed-levels.ts'
import { checkTankSize, tankAreaFt2, tankShell } from './tank-geometry.ts'
import { findTankSize, TANK_SIZES, type TankSize } from './tank-sizes.ts'

/** What is known of a tank and its filling; null or left out where it is not. A gravel weight of 0 means none. */
export type FillInput = {
  diameterIn?: number | null
  heightIn?: number | null
  nominalGrains?: number | null
  resinFt3?: number | null
  gravelLb?: number | null
}

/** Where a figure came from, best first. */
export type FillBasis = 'recorded' | 'label' | 'table' | 'geometry'
export type TankFill = { resinFt3: number; resinBasis: FillBasis; gravelLb: number; gravelBasis: FillBasis; warnings: string[] }

/**
 * The usual resin (ft³) and gravel (lb) for a tank. The record comes first, then the nominal grains on the label, then the usual fill
 * of the tank's size, then geometry. Refuses when nothing gives a resin volume.
 */
export function fillForTank(input: FillInput, speaking: Speaking, table: readonly TankSize[] = TANK_SIZES): Result<TankFill> {
  const { words } = speaking
  const tank = readTank(input, table, words)
  if ('ok' in tank) return tank
  const assumptions: string[] = []
  const missing: string[] = []
  const resin = pickResin(input, tank, speaking, assumptions, missing)
  if (resin === null) return refuse(words('noFill'))
  if (!(resin.value >= 0.01 && resin.value < 500)) return refuse(words('badResin', { value: quoteNumber(resin.value) }))
  const gravel = pickGravel(input, tank, resin.value, table, words, assumptions, missing)
  if (!(gravel.value >= 0 && gravel.value < 20_000)) return refuse(words('badGravel', { value: quoteNumber(gravel.value) }))
  const warnings = checkFit(tank, resin.value, gravel.value, words)
  const value = { resinFt3: resin.value, resinBasis: resin.basis, gravelLb: gravel.value, gravelBasis: gravel.basis, warnings }
  return ok(value, { assumptions, missing, sources: [sourceOf(resin.basis, tank, words)] })
}

function sourceOf(basis: FillBasis, { known }: { known: Tank }, words: Words<'kit'>): string {
  if (basis === 'recorded') return words('source/record')
  const listed = basis === 'table' ? known?.listed?.source : undefined
  return listed === undefined ? words('source/practice') : sourceWords(listed, words)
}

/** A row's source as it stands in a sentence. */
function practice(source: string, words: Words<'kit'>): string {
  return source === COMMON_PRACTICE ? words('practice') : source
}

type Tank = { diameterIn: number; heightIn: number; listed: TankSize | null } | null
type Picked = { value: number; basis: FillBasis }

function readTank(
  input: FillInput,
  table: readonly TankSize[],
  words: Words<'kit'>,
): { known: Tank } | Extract<Result<never>, { ok: false }> {
  const { diameterIn, heightIn } = input
  if (diameterIn == null || heightIn == null) return { known: null }
  const wrong = checkTankSize(diameterIn, heightIn, words)
  return wrong ?? { known: { diameterIn, heightIn, listed: findTankSize(diameterIn, heightIn, table) } }
}

function pickResin(
  input: FillInput,
  { known }: { known: Tank },
  { words, display }: Speaking,
  assumptions: string[],
  missing: string[],
): Picked | null {
  if (input.resinFt3 != null) return { value: input.resinFt3, basis: 'recorded' }
  missing.push(words('missing/resin'))
  if (input.nominalGrains != null) {
    assumptions.push(words('grainsAssumed'))
    return { value: resinFt3ForGrains(input.nominalGrains), basis: 'label' }
  }
  if (known === null) return null
  if (known.listed) {
    const size = formatTankSize(known.listed.diameterIn, known.listed.heightIn, display)
    assumptions.push(words('fillUsual', { size, source: practice(known.listed.source, words) }))
    return { value: known.listed.resinFt3.usual, basis: 'table' }
  }
  assumptions.push(words('fillShare', { share: showNumber(USUAL_FILL_SHARE, 2, display) ?? '' }))
  return { value: roundToBag(USUAL_FILL_SHARE * tankShell(known.diameterIn, known.heightIn).volumeFt3), basis: 'geometry' }
}

/** Mean of usual resin over shell volume in the table of usual fills: 0.612 (0.56 to 0.68). */
export const USUAL_FILL_SHARE = 0.61

/** Down to a quarter ft³, above 3 ft³ to a half, never to nothing: what is left free matters more than the last quart of resin. */
function roundToBag(resinFt3: number): number {
  const step = resinFt3 > 3 ? 0.5 : 0.25
  return resinFt3 < step ? Math.round(resinFt3 * 100) / 100 : Math.floor(resinFt3 / step + 1e-9) * step
}

function pickGravel(
  input: FillInput,
  { known }: { known: Tank },
  resinFt3: number,
  table: readonly TankSize[],
  words: Words<'kit'>,
  assumptions: string[],
  missing: string[],
): Picked {
  if (input.gravelLb != null) return { value: input.gravelLb, basis: 'recorded' }
  missing.push(words('missing/gravel'))
  if (known?.listed) {
    assumptions.push(words('gravelUsual', { source: practice(known.listed.source, words) }))
    return { value: known.listed.gravelLb.usual, basis: 'table' }
  }
  if (known) {
    assumptions.push(words('gravelGeometry'))
    return { value: gravelFromGeometryLb(known.diameterIn, known.heightIn, table), basis: 'geometry' }
  }
  assumptions.push(words('gravelPerResin'))
  return { value: Math.round(12 * resinFt3), basis: 'geometry' }
}

/** Largest share of a listed tank that its usual gravel takes: a short tank is not given more. */
const MOST_GRAVEL_SHARE = 0.115

function gravelFromGeometryLb(diameterIn: number, heightIn: number, table: readonly TankSize[]): number {
  const byArea = gravelPerFt2(diameterIn, table) * tankAreaFt2(diameterIn)
  const most = MOST_GRAVEL_SHARE * tankShell(diameterIn, heightIn).volumeFt3 * GRAVEL_BULK_LB_FT3
  return Math.max(1, Math.round(Math.min(byArea, most)))
}

/** Gravel per ft² of cross-section, lb, between the listed diameters and held flat outside them; `table` is in order of diameter. */
function gravelPerFt2(diameterIn: number, table: readonly TankSize[]): number {
  const points = table.map((tank) => ({ d: tank.diameterIn, y: tank.gravelLb.usual / tankAreaFt2(tank.diameterIn) }))
  let below = points[0]
  for (const point of points) {
    if (point.d >= diameterIn) {
      if (below === undefined || point.d === below.d || below.d > diameterIn) return point.y
      return below.y + ((point.y - below.y) * (diameterIn - below.d)) / (point.d - below.d)
    }
    below = point
  }
  return below?.y ?? 0
}

function checkFit({ known }: { known: Tank }, resinFt3: number, gravelLb: number, words: Words<'kit'>): string[] {
  if (known === null) return []
  const { volumeFt3 } = tankShell(known.diameterIn, known.heightIn)
  const taken = resinFt3 + gravelLb / GRAVEL_BULK_LB_FT3
  if (taken > 0.95 * volumeFt3) return [words('overfull')]
  if (resinFt3 > 0.75 * volumeFt3) return [words('littleRoom')]
  return resinFt3 < 0.35 * volumeFt3 ? [words('littleResin')] : []
}
