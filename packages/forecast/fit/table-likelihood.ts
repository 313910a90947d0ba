import { intervalTerms } from '../lifetime/interval-terms.ts'
import { LIFE_FAMILIES, type LifeFamily, type LifeFamilyName } from '../lifetime/life-family.ts'
import { spreadOf } from '../lifetime/spread.ts'
import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import { type Derivatives, derivatives, MixedTerms } from './mixed-terms.ts'
import { logRate, rateCurve, rateSlope, STRIDE, WATER_KEYS, type WearSums, wearSums } from './wear-sums.ts'
import { BETWEEN, ENTRY, KNOWN, LOWER, UPPER, type WearTable, WORKING } from './wear-table.ts'

const SIZE = PARAMETER_KEYS.length

/** A table under one set of log parameters and one family, ready to be summed. */
export interface PlacedTable {
  readonly table: WearTable
  readonly family: LifeFamily
  readonly theta: ArrayLike<number>
  readonly wear: WearSums
  /** 1/σ of ln life. */
  readonly steepness: number
  /** z of the median. */
  readonly middle: number
}

export function placeTable(table: WearTable, family: LifeFamilyName, theta: ArrayLike<number>): PlacedTable {
  const model = LIFE_FAMILIES[family]
  const shape = Math.exp(theta[1] as number)
  return { table, family: model, theta, wear: wearSums(table, theta), steepness: shape / spreadOf(family), middle: model.quantile(0.5) }
}

const numerator = new MixedTerms()
const entry = new MixedTerms()
const local = derivatives()

/**
 * ln likelihood of records [from, to) with ln life shifted by `shift`, its gradient and Hessian added to `out`. Failures on a known day bring the density
 * in calendar time, intervals ln(S − S), late entry is divided out; an uncertain beginning is averaged over, numerator and entry apart.
 */
export function addRecords(placed: PlacedTable, from: number, to: number, shift: number, out: Derivatives): void {
  const { table } = placed
  for (let r = from; r < to; r++) {
    const first = table.firstBeginning[r] as number
    const last = table.firstBeginning[r + 1] as number
    if (last - first === 1 && table.truncated[r] === 0) {
      endTerm(placed, r, first, shift, out)
      continue
    }
    numerator.clear()
    entry.clear()
    for (let b = first; b < last; b++) {
      local.clear()
      local.value = table.logWeight[b] as number
      endTerm(placed, r, b, shift, local)
      numerator.add(local)
      if (table.truncated[r] === 0) continue
      local.clear()
      local.value = table.logWeight[b] as number
      if (readZ(placed, r, 3 * b + ENTRY, shift, slopeA)) addSurvival(placed, r, 3 * b + ENTRY, local)
      entry.add(local)
    }
    numerator.addTo(out, 1)
    if (table.truncated[r] === 1) entry.addTo(out, -1)
  }
}

const slopeA = new Float64Array(SIZE)
const slopeB = new Float64Array(SIZE)
const term = new Float64Array(3)
const pair = new Float64Array(6)
let zRead = 0

/** z = (ln wear − ln median − shift)/σ + middle into zRead, dz/dθ into slope; false where there is no wear. */
function readZ(placed: PlacedTable, r: number, sum: number, shift: number, slope: Float64Array): boolean {
  const { table, theta, wear, steepness } = placed
  const at = sum * STRIDE
  const log = wear.sums[at] as number
  if (log === Number.NEGATIVE_INFINITY) return false
  const crosslink = -Math.exp(theta[5] as number) * (table.crosslink[r] as number)
  const use = Math.exp(theta[6] as number) * (table.use[r] as number)
  const y = steepness * (log + crosslink + use - (theta[0] as number) - shift)
  zRead = y + placed.middle
  slope[0] = -steepness
  slope[1] = y
  for (let j = 0; j < 4; j++) slope[WATER_KEYS[j] as number] = steepness * (wear.sums[at + 1 + j] as number)
  slope[5] = steepness * crosslink
  slope[6] = steepness * use
  return true
}

/** Adds factor · d²z/dθ². */
function addCurve(placed: PlacedTable, sum: number, slope: Float64Array, factor: number, out: Derivatives): void {
  const { hessian } = out
  // By the shape, z's slopes grow in proportion to it; by itself and twice the shape too.
  for (let j = 0; j < SIZE; j++) out.addAt(1, j, factor * (slope[j] as number))
  const at = sum * STRIDE + 5
  for (let j = 0, n = 0; j < 4; j++)
    for (let k = 0; k <= j; k++, n++)
      out.addAt(WATER_KEYS[j] as number, WATER_KEYS[k] as number, factor * placed.steepness * (placed.wear.sums[at + n] as number))
  hessian[5 * SIZE + 5] = (hessian[5 * SIZE + 5] as number) + factor * (slope[5] as number)
  hessian[6 * SIZE + 6] = (hessian[6 * SIZE + 6] as number) + factor * (slope[6] as number)
}

/** Adds ln S at the z just read. */
function addSurvival(placed: PlacedTable, _r: number, sum: number, out: Derivatives): void {
  placed.family.logSurvival(zRead, term)
  out.value += term[0] as number
  out.addProduct(slopeA, term[1] as number, term[2] as number)
  addCurve(placed, sum, slopeA, term[1] as number, out)
}

/** ln of the chance (or density) of how the record ends, given its beginning. */
function endTerm(placed: PlacedTable, r: number, b: number, shift: number, out: Derivatives): void {
  const { table, wear } = placed
  const lower = 3 * b + LOWER
  readZ(placed, r, lower, shift, slopeA)
  const kind = table.kind[r]
  if (kind === WORKING) {
    addSurvival(placed, r, lower, out)
    return
  }
  if (kind === KNOWN) {
    const water = table.endWater[r] as number
    const at = lower * STRIDE
    placed.family.logDensity(zRead, term)
    // Density by calendar time: that of z, times dz/dt = steepness · rate / wear.
    out.value += (term[0] as number) + Math.log(placed.steepness) + logRate(wear.waters, water) - (wear.sums[at] as number)
    out.addProduct(slopeA, term[1] as number, term[2] as number)
    addCurve(placed, lower, slopeA, term[1] as number, out)
    out.gradient[1] = (out.gradient[1] as number) + 1
    for (let j = 0, n = 0; j < 4; j++) {
      const key = WATER_KEYS[j] as number
      out.gradient[key] = (out.gradient[key] as number) + rateSlope(wear.waters, water, j) - (wear.sums[at + 1 + j] as number)
      for (let k = 0; k <= j; k++, n++)
        out.addAt(key, WATER_KEYS[k] as number, rateCurve(wear.waters, water, n) - (wear.sums[at + 5 + n] as number))
    }
    return
  }
  const zLower = zRead
  const upper = 3 * b + UPPER
  readZ(placed, r, upper, shift, slopeB)
  // An interval too short for its ends to differ is kept apart by a hair.
  intervalTerms(placed.family, zLower, Math.max(zRead, zLower + 1e-9), pair)
  const [value, ga, gb, gaa, gab, gbb] = pair as unknown as [number, number, number, number, number, number]
  out.value += value
  out.addProduct(slopeA, ga, gaa)
  out.addProduct(slopeB, gb, gbb)
  out.addCross(slopeA, slopeB, gab)
  addCurve(placed, lower, slopeA, ga, out)
  addCurve(placed, upper, slopeB, gb, out)
}

const shifted = new Float64Array(3)

/** The same by the shift alone: value and its first and second derivative by a shift of ln life; an order of magnitude cheaper. */
export function shiftTerms(placed: PlacedTable, from: number, to: number, shift: number): Float64Array {
  const { table, steepness } = placed
  shifted.fill(0)
  for (let r = from; r < to; r++) {
    const first = table.firstBeginning[r] as number
    const last = table.firstBeginning[r + 1] as number
    for (const sign of table.truncated[r] === 0 ? [1] : [1, -1]) {
      let [top, sum, one, two] = [Number.NEGATIVE_INFINITY, 0, 0, 0]
      for (let b = first; b < last; b++) {
        shiftTerm(placed, r, b, shift, sign)
        const value = (term[0] as number) + (table.logWeight[b] as number)
        if (value > top) {
          const shrink = Math.exp(top - value)
          sum *= shrink
          one *= shrink
          two *= shrink
          top = value
        }
        const share = Math.exp(value - top)
        // dz/dshift = −steepness.
        const d = -steepness * (term[1] as number)
        sum += share
        one += share * d
        two += share * (steepness * steepness * (term[2] as number) + d * d)
      }
      const mean = one / sum
      shifted[0] = (shifted[0] as number) + sign * (top + Math.log(sum))
      shifted[1] = (shifted[1] as number) + sign * mean
      shifted[2] = (shifted[2] as number) + sign * (two / sum - mean * mean)
    }
  }
  return shifted
}

/** End (sign 1) or entry (sign −1) term of one beginning by z into `term`. */
function shiftTerm(placed: PlacedTable, r: number, b: number, shift: number, sign: number): void {
  const { table, wear, steepness, family } = placed
  if (!readZ(placed, r, 3 * b + (sign > 0 ? LOWER : ENTRY), shift, slopeA)) {
    term.fill(0)
    return
  }
  const kind = sign > 0 ? table.kind[r] : WORKING
  if (kind === WORKING) family.logSurvival(zRead, term)
  else if (kind === KNOWN) {
    family.logDensity(zRead, term)
    const water = table.endWater[r] as number
    term[0] = (term[0] as number) + Math.log(steepness) + logRate(wear.waters, water) - (wear.sums[3 * b * STRIDE] as number)
  } else if (kind === BETWEEN) {
    const zLower = zRead
    readZ(placed, r, 3 * b + UPPER, shift, slopeB)
    intervalTerms(family, zLower, Math.max(zRead, zLower + 1e-9), pair)
    term[0] = pair[0] as number
    term[1] = (pair[1] as number) + (pair[2] as number)
    term[2] = (pair[3] as number) + 2 * (pair[4] as number) + (pair[5] as number)
  }
}
