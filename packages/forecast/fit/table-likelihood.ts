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
  /** z of each sum without shift; −Infinity where there is no wear. */
  readonly base: Float64Array
}

export function placeTable(table: WearTable, family: LifeFamilyName, theta: ArrayLike<number>): PlacedTable {
  const model = LIFE_FAMILIES[family]
  const wear = wearSums(table, theta)
  const steepness = Math.exp(theta[1] as number) / spreadOf(family)
  const middle = model.quantile(0.5)
  const base = new Float64Array(table.firstPiece.length - 1)
  for (let r = 0; r < table.count; r++) {
    const traits = crosslinkPart(table, theta, r) + usePart(table, theta, r) - (theta[0] as number)
    const last = 3 * (table.firstBeginning[r + 1] as number)
    for (let sum = 3 * (table.firstBeginning[r] as number); sum < last; sum++)
      base[sum] = steepness * ((wear.sums[sum * STRIDE] as number) + traits) + middle
  }
  return { table, family: model, theta, wear, steepness, middle, base }
}

function crosslinkPart(table: WearTable, theta: ArrayLike<number>, r: number): number {
  return -Math.exp(theta[5] as number) * (table.crosslink[r] as number)
}

function usePart(table: WearTable, theta: ArrayLike<number>, r: number): number {
  return Math.exp(theta[6] as number) * (table.use[r] as number)
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
    if (last - first === 1) {
      endTerm(placed, r, first, shift, out)
      if (table.truncated[r] === 1 && readZ(placed, r, 3 * first + ENTRY, shift, slopeA)) addSurvival(placed, 3 * first + ENTRY, -1, out)
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
      if (readZ(placed, r, 3 * b + ENTRY, shift, slopeA)) addSurvival(placed, 3 * b + ENTRY, 1, local)
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
  zRead = (placed.base[sum] as number) - steepness * shift
  if (zRead === Number.NEGATIVE_INFINITY) return false
  slope[0] = -steepness
  slope[1] = zRead - placed.middle
  for (let j = 0; j < 4; j++) slope[WATER_KEYS[j] as number] = steepness * (wear.sums[at + 1 + j] as number)
  slope[5] = steepness * crosslinkPart(table, theta, r)
  slope[6] = steepness * usePart(table, theta, r)
  return true
}

/** Places of the ten water curvatures in the Hessian's lower triangle. */
const CURVE_PLACES = WATER_KEYS.flatMap((i, a) => WATER_KEYS.slice(0, a + 1).map((j) => i * SIZE + j))

/** Adds factor · d²z/dθ². */
function addCurve(placed: PlacedTable, sum: number, slope: Float64Array, factor: number, out: Derivatives): void {
  const { hessian } = out
  // By the shape, z's slopes grow in proportion to it; by itself and twice the shape too.
  hessian[SIZE] = (hessian[SIZE] as number) + factor * (slope[0] as number)
  for (let j = 1; j < SIZE; j++) hessian[j * SIZE + 1] = (hessian[j * SIZE + 1] as number) + factor * (slope[j] as number)
  const at = sum * STRIDE + 5
  const { sums } = placed.wear
  const by = factor * placed.steepness
  for (let n = 0; n < 10; n++) {
    const place = CURVE_PLACES[n] as number
    hessian[place] = (hessian[place] as number) + by * (sums[at + n] as number)
  }
  hessian[5 * SIZE + 5] = (hessian[5 * SIZE + 5] as number) + factor * (slope[5] as number)
  hessian[6 * SIZE + 6] = (hessian[6 * SIZE + 6] as number) + factor * (slope[6] as number)
}

/** Adds sign × ln S at the z just read. */
function addSurvival(placed: PlacedTable, sum: number, sign: number, out: Derivatives): void {
  placed.family.logSurvival(zRead, term)
  const first = sign * (term[1] as number)
  out.value += sign * (term[0] as number)
  out.addProduct(slopeA, first, sign * (term[2] as number))
  addCurve(placed, sum, slopeA, first, out)
}

/** ln of the chance (or density) of how the record ends, given its beginning. */
function endTerm(placed: PlacedTable, r: number, b: number, shift: number, out: Derivatives): void {
  const { table, wear } = placed
  const lower = 3 * b + LOWER
  readZ(placed, r, lower, shift, slopeA)
  const kind = table.kind[r]
  if (kind === WORKING) {
    addSurvival(placed, lower, 1, out)
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
    for (let sign = 1; sign >= (table.truncated[r] === 0 ? 1 : -1); sign -= 2) {
      if (last - first === 1) {
        shiftTerm(placed, r, first, shift, sign)
        shifted[0] = (shifted[0] as number) + sign * (term[0] as number)
        shifted[1] = (shifted[1] as number) - sign * steepness * (term[1] as number)
        shifted[2] = (shifted[2] as number) + sign * steepness * steepness * (term[2] as number)
        continue
      }
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
  const { table, wear, steepness, family, base } = placed
  const z = (base[3 * b + (sign > 0 ? LOWER : ENTRY)] as number) - steepness * shift
  if (z === Number.NEGATIVE_INFINITY) {
    term.fill(0)
    return
  }
  const kind = sign > 0 ? table.kind[r] : WORKING
  if (kind === WORKING) family.logSurvival(z, term)
  else if (kind === KNOWN) {
    family.logDensity(z, term)
    const water = table.endWater[r] as number
    term[0] = (term[0] as number) + Math.log(steepness) + logRate(wear.waters, water) - (wear.sums[3 * b * STRIDE] as number)
  } else if (kind === BETWEEN) {
    const upper = (base[3 * b + UPPER] as number) - steepness * shift
    intervalTerms(family, z, Math.max(upper, z + 1e-9), pair)
    term[0] = pair[0] as number
    term[1] = (pair[1] as number) + (pair[2] as number)
    term[2] = (pair[3] as number) + 2 * (pair[4] as number) + (pair[5] as number)
  }
}
