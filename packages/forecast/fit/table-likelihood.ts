import { intervalTerms } from '../lifetime/interval-terms.ts'
import { LIFE_FAMILIES, type LifeFamily, type LifeFamilyName } from '../lifetime/life-family.ts'
import { spreadOf } from '../lifetime/spread.ts'
import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import { type Derivatives, derivatives, MixedTerms } from './mixed-terms.ts'
import { addSort, addStaying } from './sort-terms.ts'
import { logRate, rateCurve, rateSlope, STRIDE, WATER_KEYS, type WearSums, wearSums } from './wear-sums.ts'
import { KNOWN, LOWER, UPPER, type WearTable, WORKING } from './wear-table.ts'

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
    const last = 2 * (table.firstCase[r + 1] as number)
    for (let sum = 2 * (table.firstCase[r] as number); sum < last; sum++)
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

const mixed = new MixedTerms()
const local = derivatives()

/**
 * ln likelihood of records [from, to) with ln life shifted by `shift`, its gradient and Hessian added to `out`. Failures on a known day bring the density
 * in calendar time, intervals ln(S − S), late entry is divided out; uncertain beginnings, and the ways a record can have come about, are summed over, ends and entries apart.
 */
export function addRecords(placed: PlacedTable, from: number, to: number, shift: number, out: Derivatives): void {
  const { table, theta } = placed
  for (let r = from; r < to; r++) {
    addStaying(table.yearsAtRisk[r] as number, theta, out)
    const first = table.firstCase[r] as number
    const entry = table.firstEntry[r] as number
    const last = table.firstCase[r + 1] as number
    if (entry - first === 1) caseTerm(placed, r, first, shift, out)
    else {
      mixed.clear()
      for (let c = first; c < entry; c++) {
        local.clear()
        caseTerm(placed, r, c, shift, local)
        mixed.add(local)
      }
      mixed.addTo(out, 1)
    }
    if (last - entry === 1) {
      if (readZ(placed, r, 2 * entry + LOWER, shift, slopeA)) addSurvival(placed, 2 * entry + LOWER, -1, out)
    } else if (last > entry) {
      mixed.clear()
      for (let c = entry; c < last; c++) {
        local.clear()
        addWeight(placed, c, local)
        if (readZ(placed, r, 2 * c + LOWER, shift, slopeA)) addSurvival(placed, 2 * c + LOWER, 1, local)
        mixed.add(local)
      }
      mixed.addTo(out, -1)
    }
  }
}

/** The weight of a case's beginning and the chance of its sort. */
function addWeight({ table, theta }: PlacedTable, c: number, out: Derivatives): void {
  out.value += table.logWeight[c] as number
  addSort(table.sort[c] as number, theta, out)
}

function caseTerm(placed: PlacedTable, r: number, c: number, shift: number, out: Derivatives): void {
  addWeight(placed, c, out)
  endTerm(placed, r, c, shift, out)
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

/** ln of the chance (or density) of how a case ends, given its beginning. */
function endTerm(placed: PlacedTable, r: number, c: number, shift: number, out: Derivatives): void {
  const { table, wear } = placed
  const lower = 2 * c + LOWER
  readZ(placed, r, lower, shift, slopeA)
  const kind = table.kind[c]
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
  const upper = 2 * c + UPPER
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
