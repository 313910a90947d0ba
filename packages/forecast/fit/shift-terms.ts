import { intervalTerms } from '../lifetime/interval-terms.ts'
import type { PlacedTable } from './place-table.ts'
import { REMOVAL_RATE, sortLog } from './sort-terms.ts'
import { logRate, STRIDE } from './wear-sums.ts'
import { BETWEEN, KNOWN, LOWER, UPPER, WORKING } from './wear-table.ts'

const term = new Float64Array(3)
const pair = new Float64Array(6)
const shifted = new Float64Array(3)

/** ln likelihood of records [from, to) as addRecords has it, by the shift alone: value and its first and second derivative by a shift of ln life; an order of magnitude cheaper. */
export function shiftTerms(placed: PlacedTable, from: number, to: number, shift: number): Float64Array {
  const { table, theta } = placed
  const removals = Math.exp(theta[REMOVAL_RATE] as number)
  shifted.fill(0)
  for (let r = from; r < to; r++) {
    shifted[0] = (shifted[0] as number) - removals * (table.yearsAtRisk[r] as number)
    const entry = table.firstEntry[r] as number
    const last = table.firstCase[r + 1] as number
    shiftCases(placed, r, table.firstCase[r] as number, entry, shift, 1)
    if (last > entry) shiftCases(placed, r, entry, last, shift, -1)
  }
  return shifted
}

/** Adds sign × ln Σ of the cases [first, last) to `shifted`. */
function shiftCases(placed: PlacedTable, r: number, first: number, last: number, shift: number, sign: number): void {
  const { table, steepness, theta } = placed
  let [top, sum, one, two] = [Number.NEGATIVE_INFINITY, 0, 0, 0]
  for (let c = first; c < last; c++) {
    shiftTerm(placed, r, c, shift)
    // Of a single entry the weight is 1.
    const value =
      (term[0] as number) + (sign < 0 && last - first === 1 ? 0 : (table.logWeight[c] as number) + sortLog(table.sort[c] as number, theta))
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

/** End of one case by z into `term`. */
function shiftTerm(placed: PlacedTable, r: number, c: number, shift: number): void {
  const { table, wear, steepness, family, base } = placed
  const z = (base[2 * c + LOWER] as number) - steepness * shift
  if (z === Number.NEGATIVE_INFINITY) {
    term.fill(0)
    return
  }
  const kind = table.kind[c]
  if (kind === WORKING) family.logSurvival(z, term)
  else if (kind === KNOWN) {
    family.logDensity(z, term)
    const water = table.endWater[r] as number
    term[0] = (term[0] as number) + Math.log(steepness) + logRate(wear.waters, water) - (wear.sums[2 * c * STRIDE] as number)
  } else if (kind === BETWEEN) {
    const upper = (base[2 * c + UPPER] as number) - steepness * shift
    intervalTerms(family, z, Math.max(upper, z + 1e-9), pair)
    term[0] = pair[0] as number
    term[1] = (pair[1] as number) + (pair[2] as number)
    term[2] = (pair[3] as number) + 2 * (pair[4] as number) + (pair[5] as number)
  }
}
