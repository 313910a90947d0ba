import { intervalTerms } from '../lifetime/interval-terms.ts'
import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import type { Derivatives } from './derivatives.ts'
import type { PlacedTable } from './place-table.ts'
import { CALLS, REMOVED, SILENT } from './record-ways.ts'
import { CALL_ODDS, REMOVAL_RATE, SORTS, sortLog } from './sort-terms.ts'
import { logRate, rateCurve, rateSlope, STRIDE, WATER_KEYS } from './wear-sums.ts'
import { BETWEEN, KNOWN, WORKING } from './wear-table.ts'

const SIZE = PARAMETER_KEYS.length

/** z depends on the parameters of life alone, which stand first. */
const LIFE = CALL_ODDS

/** A case that has so small a share of its record's chance adds nothing that a sum of such numbers could hold. */
const NO_SHARE = 1e-17

/** By case of the record at hand: z at its two days, ln of its chance, and the slopes of that by the two z: by a, a twice, b, a and b, b twice. */
let room = 64
let zs = new Float64Array(2 * room)
let values = new Float64Array(room)
let ends = new Float64Array(5 * room)

const sorts = new Float64Array(SORTS.length)
const a = new Float64Array(SIZE)
const b = new Float64Array(SIZE)
const own = new Float64Array(SIZE)
const known = new Float64Array(SIZE)
const mean = new Float64Array(SIZE)
const term = new Float64Array(3)
const pair = new Float64Array(6)

/**
 * ln likelihood of records [from, to) with ln life shifted by `shift`, its gradient and Hessian added to `out`. Failures on a known day bring the density
 * in calendar time, intervals ln(S − S), late entry is divided out; uncertain beginnings, and the ways a record can have come about, are summed over, ends and entries apart.
 */
export function addRecords(placed: PlacedTable, from: number, to: number, shift: number, out: Derivatives): void {
  const { table, theta } = placed
  for (const sort of SORTS) sorts[sort] = sortLog(sort, theta)
  const calls = Math.exp(sorts[CALLS] as number)
  let years = 0
  for (let r = from; r < to; r++) {
    years += table.yearsAtRisk[r] as number
    const first = table.firstCase[r] as number
    const entry = table.firstEntry[r] as number
    const last = table.firstCase[r + 1] as number
    addSum(placed, r, first, entry, shift, calls, 1, out)
    if (last > entry) addSum(placed, r, entry, last, shift, calls, -1, out)
  }
  // Chance that no other reason took the beds out while it could: e^(−rate · years).
  const staying = -Math.exp(theta[REMOVAL_RATE] as number) * years
  out.value += staying
  out.gradient[REMOVAL_RATE] = (out.gradient[REMOVAL_RATE] as number) + staying
  out.addAt(REMOVAL_RATE, REMOVAL_RATE, staying)
}

/** Adds sign × ln Σ of the cases [first, last). */
function addSum(
  placed: PlacedTable,
  r: number,
  first: number,
  last: number,
  shift: number,
  calls: number,
  sign: number,
  out: Derivatives,
): void {
  const count = last - first
  makeRoom(count)
  let top = Number.NEGATIVE_INFINITY
  for (let n = 0; n < count; n++) {
    readCase(placed, r, first + n, shift, n)
    top = Math.max(top, values[n] as number)
  }
  if (count === 1) {
    out.value += sign * (values[0] as number)
    addCase(placed, r, first, 0, sign, calls, false, out)
    return
  }
  let sum = 0
  for (let n = 0; n < count; n++) sum += Math.exp((values[n] as number) - top)
  out.value += sign * (top + Math.log(sum))
  mean.fill(0)
  for (let n = 0; n < count; n++) {
    const share = Math.exp((values[n] as number) - top) / sum
    if (share > NO_SHARE) addCase(placed, r, first + n, n, sign * share, calls, true, out)
  }
  const { gradient, hessian } = out
  for (let i = 0; i < SIZE; i++) {
    const by = mean[i] as number
    gradient[i] = (gradient[i] as number) + by
    for (let j = 0; j <= i; j++) hessian[i * SIZE + j] = (hessian[i * SIZE + j] as number) - sign * by * (mean[j] as number)
  }
}

function makeRoom(count: number): void {
  if (count <= room) return
  room = 2 * count
  zs = new Float64Array(2 * room)
  values = new Float64Array(room)
  ends = new Float64Array(5 * room)
}

/** ln of a case's chance (or density), with what its slopes are made of. */
function readCase(placed: PlacedTable, r: number, c: number, shift: number, n: number): void {
  const { table, family, steepness, base, wear } = placed
  const z = (base[2 * c] as number) - steepness * shift
  const e = 5 * n
  let value = (table.logWeight[c] as number) + (sorts[table.sort[c] as number] as number)
  ends.fill(0, e, e + 5)
  zs[2 * n] = z
  const kind = table.kind[c]
  if (kind === BETWEEN) {
    // An interval too short for its ends to differ is kept apart by a hair.
    const until = Math.max((base[2 * c + 1] as number) - steepness * shift, z + 1e-9)
    zs[2 * n + 1] = until
    intervalTerms(family, z, until, pair)
    value += pair[0] as number
    ends[e] = pair[1] as number
    ends[e + 1] = pair[3] as number
    ends[e + 2] = pair[2] as number
    ends[e + 3] = pair[4] as number
    ends[e + 4] = pair[5] as number
  } else if (z !== Number.NEGATIVE_INFINITY) {
    if (kind === WORKING) family.logSurvival(z, term)
    else {
      family.logDensity(z, term)
      // Density by calendar time: that of z, times dz/dt = steepness · rate / wear.
      value += Math.log(steepness) + logRate(wear.waters, table.endWater[r] as number) - (wear.sums[2 * c * STRIDE] as number)
    }
    value += term[0] as number
    ends[e] = term[1] as number
    ends[e + 1] = term[2] as number
  }
  values[n] = value
}

/**
 * Adds weight × the slopes of ln chance of the n-th case read; where it `mixes` with others, its second slopes with the square of the first, and the first into `mean`.
 */
function addCase(
  placed: PlacedTable,
  r: number,
  c: number,
  n: number,
  weight: number,
  calls: number,
  mixes: boolean,
  out: Derivatives,
): void {
  const { hessian } = out
  const { table } = placed
  const e = 5 * n
  const ga = ends[e] as number
  const gb = ends[e + 2] as number
  const square = mixes ? 1 : 0
  own.fill(0)
  if (zs[2 * n] !== Number.NEGATIVE_INFINITY) {
    const aa = weight * ((ends[e + 1] as number) + square * ga * ga)
    slopesOf(placed, r, 2 * c, zs[2 * n] as number, a)
    for (let i = 0; i < LIFE; i++) own[i] = ga * (a[i] as number)
    addCurve(placed, 2 * c, a, weight * ga, hessian)
    if (table.kind[c] === BETWEEN) {
      const ab = weight * ((ends[e + 3] as number) + square * ga * gb)
      const bb = weight * ((ends[e + 4] as number) + square * gb * gb)
      slopesOf(placed, r, 2 * c + 1, zs[2 * n + 1] as number, b)
      addCurve(placed, 2 * c + 1, b, weight * gb, hessian)
      for (let i = 0; i < LIFE; i++) {
        const ai = a[i] as number
        const bi = b[i] as number
        own[i] = (own[i] as number) + gb * bi
        const byA = aa * ai + ab * bi
        const byB = ab * ai + bb * bi
        for (let j = 0; j <= i; j++)
          hessian[i * SIZE + j] = (hessian[i * SIZE + j] as number) + byA * (a[j] as number) + byB * (b[j] as number)
      }
    } else {
      for (let i = 0; i < LIFE; i++) {
        const by = aa * (a[i] as number)
        for (let j = 0; j <= i; j++) hessian[i * SIZE + j] = (hessian[i * SIZE + j] as number) + by * (a[j] as number)
      }
      if (table.kind[c] === KNOWN) addKnownDay(placed, r, c, weight, mixes, ga, out)
    }
  }
  addSort(table.sort[c] as number, weight, calls, square, out)
  const first = mixes ? mean : out.gradient
  for (let i = 0; i < SIZE; i++) first[i] = (first[i] as number) + weight * (own[i] as number)
}

/** What the density by calendar time adds: the slopes of ln(steepness · rate / wear). */
function addKnownDay(placed: PlacedTable, r: number, c: number, weight: number, mixes: boolean, ga: number, out: Derivatives): void {
  const { table, wear } = placed
  const water = table.endWater[r] as number
  const at = 2 * c * STRIDE
  known.fill(0)
  known[1] = 1
  for (let j = 0, n = 0; j < 4; j++) {
    const key = WATER_KEYS[j] as number
    known[key] = rateSlope(wear.waters, water, j) - (wear.sums[at + 1 + j] as number)
    for (let k = 0; k <= j; k++, n++)
      out.addAt(key, WATER_KEYS[k] as number, weight * (rateCurve(wear.waters, water, n) - (wear.sums[at + 5 + n] as number)))
  }
  if (mixes) out.addSquare(known, a, weight, weight * ga)
  for (let i = 0; i < LIFE; i++) own[i] = (own[i] as number) + (known[i] as number)
}

/** The chance of a case's sort: of a household that calls, of one that does not, of a removal a year. */
function addSort(sort: number, weight: number, calls: number, square: number, out: Derivatives): void {
  const { hessian } = out
  if (sort !== CALLS && sort !== SILENT && sort !== REMOVED) return
  const place = sort === REMOVED ? REMOVAL_RATE : CALL_ODDS
  const slope = sort === REMOVED ? 1 : sort === CALLS ? 1 - calls : -calls
  const bend = sort === REMOVED ? 0 : -calls * (1 - calls)
  const by = square * weight * slope
  for (let j = 0; j < LIFE; j++) hessian[place * SIZE + j] = (hessian[place * SIZE + j] as number) + by * (own[j] as number)
  hessian[place * SIZE + place] = (hessian[place * SIZE + place] as number) + by * slope + weight * bend
  own[place] = slope
}

/** dz/dθ of a sum. */
function slopesOf(placed: PlacedTable, r: number, sum: number, z: number, slope: Float64Array): void {
  const { table, steepness, wear } = placed
  const at = sum * STRIDE
  slope[0] = -steepness
  slope[1] = z - placed.middle
  for (let j = 0; j < 4; j++) slope[WATER_KEYS[j] as number] = steepness * (wear.sums[at + 1 + j] as number)
  slope[5] = steepness * placed.byCrosslink * (table.crosslink[r] as number)
  slope[6] = steepness * placed.byUse * (table.use[r] as number)
}

/** Places of the ten water curvatures in the Hessian's lower triangle. */
const CURVE_PLACES = WATER_KEYS.flatMap((i, at) => WATER_KEYS.slice(0, at + 1).map((j) => i * SIZE + j))

/** Adds factor · d²z/dθ². */
function addCurve(placed: PlacedTable, sum: number, slope: Float64Array, factor: number, hessian: Float64Array): void {
  // By the shape, z's slopes grow in proportion to it; by itself and twice the shape too.
  hessian[SIZE] = (hessian[SIZE] as number) + factor * (slope[0] as number)
  for (let j = 1; j < LIFE; j++) hessian[j * SIZE + 1] = (hessian[j * SIZE + 1] as number) + factor * (slope[j] as number)
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
