import type { LifeFamilyName } from '../lifetime/life-family.ts'
import { CHANCE_FAMILIES, type ChanceFamily } from './chance-families.ts'
import { type PlacedTable, placeTable, scalesOf, traitsOf } from './place-table.ts'
import { shiftTerms } from './shift-terms.ts'
import { REMOVAL_RATE, SORTS, sortLog } from './sort-terms.ts'
import { logRate, logWear, waterRates } from './wear-sums.ts'
import { BETWEEN, KNOWN, type WearTable } from './wear-table.ts'

/** Below this share of itself a difference of chances has lost too many digits, and below LEAST a chance; such a record is worked out in logarithms. */
const DIGITS = 1e-8
const LEAST = 1e-250

/** A table's chances in plain numbers under one set of log parameters at a time: several times as fast as logarithms, without slopes by the parameters. */
export interface PlainTable {
  readonly table: WearTable
  readonly name: LifeFamilyName
  readonly family: ChanceFamily
  /** By sum: z in the family's form; its chance of lasting and the slopes of that at the shift last asked for. */
  readonly power: Float64Array
  readonly lasting: Float64Array
  readonly first: Float64Array
  readonly second: Float64Array
  /** By case: its weight times its sort's chance times, of a failure on a known day, z's slope by time. */
  readonly factor: Float64Array
  theta: ArrayLike<number>
  steepness: number
  removals: number
  /** The same in logarithms, made when a record needs it. */
  logs: PlacedTable | null
}

/** Room for a table under one family; placePlain fills it. */
export function plainTable(table: WearTable, name: LifeFamilyName): PlainTable {
  const sums = () => new Float64Array(table.firstPiece.length - 1)
  return {
    ...{ table, name, family: CHANCE_FAMILIES[name], power: sums(), lasting: sums(), first: sums(), second: sums() },
    ...{ factor: new Float64Array(table.kind.length), theta: [], steepness: 1, removals: 0, logs: null },
  }
}

// Sums of a loop are single numbers, here and below: a list of them would be made anew for each record.
export function placePlain(plain: PlainTable, theta: ArrayLike<number>): void {
  const { table, family, power, factor } = plain
  const { firstCase, kind } = table
  const scales = scalesOf(plain.name, theta)
  const { steepness, middle } = scales
  const waters = waterRates(table.waters, theta)
  const sorts = SORTS.map((sort) => Math.exp(sortLog(sort, theta)))
  plain.theta = theta
  plain.steepness = steepness
  plain.removals = Math.exp(theta[REMOVAL_RATE] as number)
  plain.logs = null
  for (let r = 0; r < table.count; r++) {
    const base = steepness * traitsOf(table, scales, r) + middle
    const last = firstCase[r + 1] as number
    for (let c = firstCase[r] as number; c < last; c++) {
      const lower = logWear(table, waters, 2 * c)
      power[2 * c] = family.power(steepness * lower + base)
      factor[c] = (table.weight[c] as number) * (sorts[table.sort[c] as number] as number)
      if (kind[c] === BETWEEN) power[2 * c + 1] = family.power(steepness * logWear(table, waters, 2 * c + 1) + base)
      else if (kind[c] === KNOWN)
        factor[c] = (factor[c] as number) * steepness * Math.exp(logRate(waters, table.endWater[r] as number) - lower)
    }
  }
}

const density = new Float64Array(3)

/** ln likelihood of records [from, to) with ln life shifted. */
export function plainValue(plain: PlainTable, from: number, to: number, shift: number): number {
  const { table, family, power, lasting, factor } = plain
  const { firstCase, firstEntry, kind, yearsAtRisk } = table
  const by = family.shiftBy(-plain.steepness * shift)
  family.survivals(power, 2 * (firstCase[from] as number), 2 * (firstCase[to] as number), by, lasting)
  let sum = 0
  let product = 1
  let years = 0
  for (let r = from; r < to; r++) {
    const entry = firstEntry[r] as number
    const last = firstCase[r + 1] as number
    let chance = 0
    let met = last > entry ? 0 : 1
    let exact = true
    for (let c = firstCase[r] as number; c < entry; c++) {
      let own = lasting[2 * c] as number
      if (kind[c] === BETWEEN) {
        const before = own
        own -= lasting[2 * c + 1] as number
        if (own < DIGITS * before) exact = false
      } else if (kind[c] === KNOWN) {
        family.density(power[2 * c] as number, by, density)
        own = density[0] as number
      }
      chance += (factor[c] as number) * own
    }
    for (let c = entry; c < last; c++) met += (factor[c] as number) * (lasting[2 * c] as number)
    if (!(exact && chance > LEAST && met > LEAST)) {
      sum += inLogarithms(plain, r, shift)[0] as number
      continue
    }
    years += yearsAtRisk[r] as number
    // One logarithm for many records: as long as their product has its digits.
    const own = chance / met
    if (product < LEAST || product > 1 / LEAST || own < LEAST || own > 1 / LEAST) {
      sum += Math.log(product) + Math.log(own)
      product = 1
    } else product *= own
  }
  return sum + Math.log(product) - plain.removals * years
}

const slopes = new Float64Array(2)

/** First and second slope of the same by the shift. */
export function plainSlopes(plain: PlainTable, from: number, to: number, shift: number): Float64Array {
  const { table, family, power, lasting, first, second, factor, steepness } = plain
  const { firstCase, firstEntry, kind } = table
  const by = family.shiftBy(-steepness * shift)
  family.slopes(power, 2 * (firstCase[from] as number), 2 * (firstCase[to] as number), by, lasting, first, second)
  let one = 0
  let two = 0
  for (let r = from; r < to; r++) {
    const entry = firstEntry[r] as number
    const last = firstCase[r + 1] as number
    let chance = 0
    let rise = 0
    let bend = 0
    let exact = true
    for (let c = firstCase[r] as number; c < entry; c++) {
      const weight = factor[c] as number
      if (kind[c] === KNOWN) {
        family.density(power[2 * c] as number, by, density)
        chance += weight * (density[0] as number)
        rise += weight * (density[1] as number)
        bend += weight * (density[2] as number)
        continue
      }
      const at = 2 * c
      let own = lasting[at] as number
      let ownRise = first[at] as number
      let ownBend = second[at] as number
      if (kind[c] === BETWEEN) {
        if (own - (lasting[at + 1] as number) < DIGITS * own) exact = false
        own -= lasting[at + 1] as number
        ownRise -= first[at + 1] as number
        ownBend -= second[at + 1] as number
      }
      chance += weight * own
      rise += weight * ownRise
      bend += weight * ownBend
    }
    let met = last > entry ? 0 : 1
    let metRise = 0
    let metBend = 0
    for (let c = entry; c < last; c++) {
      const weight = factor[c] as number
      met += weight * (lasting[2 * c] as number)
      metRise += weight * (first[2 * c] as number)
      metBend += weight * (second[2 * c] as number)
    }
    if (!(exact && chance > LEAST && met > LEAST)) {
      const terms = inLogarithms(plain, r, shift)
      one += (terms[1] as number) / -steepness
      two += (terms[2] as number) / (steepness * steepness)
      continue
    }
    one += rise / chance - metRise / met
    two += bend / chance - (rise / chance) ** 2 - metBend / met + (metRise / met) ** 2
  }
  // dz/dshift = −steepness.
  slopes[0] = -steepness * one
  slopes[1] = steepness * steepness * two
  return slopes
}

/** One record too far out for plain numbers: value and slopes by the shift. */
function inLogarithms(plain: PlainTable, r: number, shift: number): Float64Array {
  plain.logs ??= placeTable(plain.table, plain.name, plain.theta)
  return shiftTerms(plain.logs, r, r + 1, shift)
}
