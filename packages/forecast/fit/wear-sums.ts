import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import type { InletWater } from '../exposure/acceleration.ts'
import type { WearTable } from './wear-table.ts'

/** The log parameters that act through the water: chlorine exponent, chloramine weight, iron exponent, temperature (places in PARAMETER_KEYS). */
export const WATER_KEYS = [2, 3, 4, 7] as const

/** Numbers kept of each sum: ln wear, four slopes, ten curvatures (lower triangle). */
export const STRIDE = 15

/** Numbers of one water: rate in clean years a day, slope of its logarithm by WATER_KEYS, second slope by the chloramine weight. */
const WATER_STRIDE = 6

/** ln of the wear of each sum, traits apart, with first and second derivatives by WATER_KEYS; sums without pieces read −Infinity. */
export interface WearSums {
  readonly sums: Float64Array
  readonly waters: Float64Array
}

export function wearSums(table: WearTable, theta: ArrayLike<number>): WearSums {
  const waters = waterRates(table.waters, theta)
  const count = table.firstPiece.length - 1
  const sums = new Float64Array(count * STRIDE)
  for (let s = 0; s < count; s++)
    sumPieces(table, waters, table.firstPiece[s] as number, table.firstPiece[s + 1] as number, sums, s * STRIDE)
  return { sums, waters }
}

/** Numbers of each water under one set of log parameters, WATER_STRIDE apart. */
export function waterRates(list: readonly InletWater[], theta: ArrayLike<number>): Float64Array {
  const [exponent, weight, iron, temperature] = WATER_KEYS.map((key) => Math.exp(theta[key] as number)) as [number, number, number, number]
  const out = new Float64Array(list.length * WATER_STRIDE)
  list.forEach((water, i) => {
    const weighted = weight * water.chloramineMgL
    const dose = 1 + water.freeChlorineMgL + weighted
    const oxidant = exponent * Math.log(dose)
    const byIron = iron * Math.log1p(water.ironMgL)
    const byTemperature = water.temperatureC === null ? 0 : (temperature * (water.temperatureC - 15)) / 10
    const byWeight = (exponent * weighted) / dose
    out.set(
      [
        Math.exp(oxidant + byIron + byTemperature) / DAYS_PER_YEAR,
        oxidant,
        byWeight,
        byIron,
        byTemperature,
        byWeight * (1 - weighted / dose),
      ],
      i * WATER_STRIDE,
    )
  })
  return out
}

/** ln wear of a sum alone; −Infinity where there is none. */
export function logWear(table: WearTable, waters: Float64Array, sum: number): number {
  const { pieceDays, pieceWater, firstPiece } = table
  let total = 0
  const to = firstPiece[sum + 1] as number
  for (let p = firstPiece[sum] as number; p < to; p++)
    total += (pieceDays[p] as number) * (waters[(pieceWater[p] as number) * WATER_STRIDE] as number)
  return Math.log(total)
}

const slope = new Float64Array(4)
const curve = new Float64Array(10)

/** ln Σ days·rate with the moments of its slopes: the second derivative is their covariance plus the mean of the second slopes. */
function sumPieces(table: WearTable, waters: Float64Array, from: number, to: number, out: Float64Array, at: number): void {
  if (from === to) {
    out[at] = Number.NEGATIVE_INFINITY
    return
  }
  slope.fill(0)
  curve.fill(0)
  let total = 0
  for (let p = from; p < to; p++)
    total += (table.pieceDays[p] as number) * (waters[(table.pieceWater[p] as number) * WATER_STRIDE] as number)
  for (let p = from; p < to; p++) {
    const w = (table.pieceWater[p] as number) * WATER_STRIDE
    const share = ((table.pieceDays[p] as number) * (waters[w] as number)) / total
    for (let j = 0, n = 0; j < 4; j++) {
      const own = waters[w + 1 + j] as number
      slope[j] = (slope[j] as number) + share * own
      for (let k = 0; k <= j; k++, n++) curve[n] = (curve[n] as number) + share * own * (waters[w + 1 + k] as number)
    }
    // Second slopes of ln rate: oxidant by exponent twice, by exponent and weight, by weight twice; iron and temperature by themselves.
    const byWeight = waters[w + 2] as number
    curve[0] = (curve[0] as number) + share * (waters[w + 1] as number)
    curve[1] = (curve[1] as number) + share * byWeight
    curve[2] = (curve[2] as number) + share * (waters[w + 5] as number)
    curve[5] = (curve[5] as number) + share * (waters[w + 3] as number)
    curve[9] = (curve[9] as number) + share * (waters[w + 4] as number)
  }
  out[at] = Math.log(total)
  for (let j = 0, n = 0; j < 4; j++) {
    out[at + 1 + j] = slope[j] as number
    for (let k = 0; k <= j; k++, n++) out[at + 5 + n] = (curve[n] as number) - (slope[j] as number) * (slope[k] as number)
  }
}

/** ln of a water's rate in clean years a day, without traits; its slopes stand behind it in WATER_KEYS' order. */
export function logRate(waters: Float64Array, water: number): number {
  return Math.log(waters[water * WATER_STRIDE] as number)
}

export function rateSlope(waters: Float64Array, water: number, j: number): number {
  return waters[water * WATER_STRIDE + 1 + j] as number
}

/** Second slopes of ln rate in the order of the lower triangle. */
export function rateCurve(waters: Float64Array, water: number, n: number): number {
  const w = water * WATER_STRIDE
  if (n === 0) return waters[w + 1] as number
  if (n === 1) return waters[w + 2] as number
  if (n === 2) return waters[w + 5] as number
  if (n === 5) return waters[w + 3] as number
  return n === 9 ? (waters[w + 4] as number) : 0
}
