import { type InletWater, REFERENCE } from '../exposure/acceleration.ts'
import type { TracedSegment } from '../exposure/water-history.ts'
import type { ReadRecord } from './read-record.ts'
import type { RecordEntry, RecordWay } from './record-ways.ts'

/** How a case ends: still working, failed on a day as good as known, failed between two days. */
export const WORKING = 0
export const KNOWN = 1
export const BETWEEN = 2

/** The two days of a case up to which wear is summed; an entry has the first alone. */
export const LOWER = 0
export const UPPER = 1

/**
 * Bed records laid out for the inner loop. Wear up to a day is a sum of days under one water each; beds under the same water share its rate, so that
 * a step of the fit reckons each water once and not each bed's history anew. Records of one supply stand together.
 */
export interface WearTable {
  readonly count: number
  readonly failures: number
  readonly waters: readonly InletWater[]
  /** By record: ln of the ageing rate is −crosslinkEffect · crosslink + throughputExponent · use. */
  readonly crosslink: Float64Array
  readonly use: Float64Array
  /** Years in which the bed could have been taken out for another reason. */
  readonly yearsAtRisk: Float64Array
  /** Water on the day of failure. */
  readonly endWater: Int32Array
  /** Cases of record r, a beginning and a way each: from firstCase[r] to firstEntry[r]; its entries from there to firstCase[r + 1]. */
  readonly firstCase: Int32Array
  readonly firstEntry: Int32Array
  /** By case: how it ends, its sort (record-ways.ts) and the weight of its beginning, as a logarithm and plain. */
  readonly kind: Uint8Array
  readonly sort: Uint8Array
  readonly logWeight: Float64Array
  readonly weight: Float64Array
  /** Pieces of sum 2 · case + (LOWER or UPPER). */
  readonly firstPiece: Int32Array
  readonly pieceWater: Int32Array
  readonly pieceDays: Float64Array
  /** Records [from, to) of each supply; those of none come first. */
  readonly supplies: readonly { readonly supply: string | null; readonly from: number; readonly to: number }[]
}

/** Lays records out; `supplies` names the supply of each, null for none. */
export function wearTable(records: readonly ReadRecord[], supplies: readonly (string | null)[]): WearTable {
  const order = records.map((_, i) => i).sort((a, b) => compare(supplies[a] ?? null, supplies[b] ?? null) || a - b)
  const count = records.length
  const cases = records.reduce((sum, record) => sum + record.beginnings.length * (record.ways.length + record.entries.length), 0)
  const places = new Map<string, number>()
  const waters: InletWater[] = []
  const waterOf = (segment: TracedSegment): number => {
    const key = `${segment.freeChlorineMgL} ${segment.chloramineMgL} ${segment.ironMgL} ${segment.temperatureC}`
    let place = places.get(key)
    if (place === undefined) {
      place = waters.length
      places.set(key, place)
      waters.push(segment)
    }
    return place
  }
  const pieceWater: number[] = []
  const pieceDays: number[] = []
  const table = {
    count,
    failures: records.filter((record) => record.ways.some(({ upper }) => upper !== Number.POSITIVE_INFINITY)).length,
    waters,
    crosslink: new Float64Array(count),
    use: new Float64Array(count),
    yearsAtRisk: Float64Array.from(order, (place) => records[place]?.yearsAtRisk ?? 0),
    endWater: new Int32Array(count),
    firstCase: new Int32Array(count + 1),
    firstEntry: new Int32Array(count),
    kind: new Uint8Array(cases),
    sort: new Uint8Array(cases),
    logWeight: new Float64Array(cases),
    firstPiece: new Int32Array(2 * cases + 1),
  }
  const groups: { supply: string | null; from: number; to: number }[] = []
  let c = 0
  order.forEach((place, r) => {
    const record = records[place] as ReadRecord
    const supply = supplies[place] ?? null
    const last = groups.at(-1)
    if (last !== undefined && last.supply === supply) last.to = r + 1
    else groups.push({ supply, from: r, to: r + 1 })
    table.crosslink[r] = (record.traits.crosslinkPercent - REFERENCE.crosslinkPercent) / 2
    const use = record.traits.gallonsPerDayPerFt3
    table.use[r] = use === null ? 0 : Math.log(use / REFERENCE.gallonsPerDayPerFt3)
    const segments = record.segments.map((segment) => ({ segment, water: waterOf(segment) }))
    table.endWater[r] = segments.findLast(({ segment }) => segment.from <= record.lower)?.water ?? segments[0]?.water ?? 0
    const addCase = (
      begin: number,
      logWeight: number,
      { sort, lower, upper }: Pick<RecordWay, 'sort' | 'lower' | 'upper'>,
      isEntry: boolean,
    ) => {
      table.kind[c] = upper === Number.POSITIVE_INFINITY ? WORKING : upper === lower ? KNOWN : BETWEEN
      table.sort[c] = sort
      table.logWeight[c] = logWeight
      if (Number.isFinite(lower)) addPieces(segments, begin, lower, isEntry, pieceWater, pieceDays)
      table.firstPiece[2 * c + 1] = pieceWater.length
      if (table.kind[c] === BETWEEN) addPieces(segments, begin, upper, false, pieceWater, pieceDays)
      table.firstPiece[2 * c + 2] = pieceWater.length
      c++
    }
    for (const { x: begin, weight } of record.beginnings)
      for (const way of record.ways) addCase(begin, Math.log(weight) + way.logFactor, way, false)
    table.firstEntry[r] = c
    for (const { x: begin, weight } of record.beginnings)
      for (const one of record.entries) addCase(begin, Math.log(weight), entryCase(one), true)
    table.firstCase[r + 1] = c
  })
  return {
    ...table,
    weight: table.logWeight.map(Math.exp),
    pieceWater: Int32Array.from(pieceWater),
    pieceDays: Float64Array.from(pieceDays),
    supplies: groups,
  }
}

const entryCase = ({ sort, entry }: RecordEntry) => ({ sort, lower: entry, upper: Number.POSITIVE_INFINITY })

/** Days under each water between two days. A bed that ends on its first day has half a day of wear rather than none: ln 0 is no likelihood. */
function addPieces(
  segments: readonly { segment: TracedSegment; water: number }[],
  begin: number,
  day: number,
  maySumToNil: boolean,
  pieceWater: number[],
  pieceDays: number[],
): void {
  if (day - begin < 0.5) {
    if (maySumToNil) return
    pieceWater.push(segments.findLast(({ segment }) => segment.from <= day)?.water ?? segments[0]?.water ?? 0)
    pieceDays.push(0.5)
    return
  }
  segments.forEach(({ segment, water }, i) => {
    // The first segment's water also serves what lies before it.
    const from = Math.max(begin, i === 0 ? Number.NEGATIVE_INFINITY : segment.from)
    const days = Math.min(day, segment.to) - from
    if (days <= 0) return
    pieceWater.push(water)
    pieceDays.push(days)
  })
}

function compare(a: string | null, b: string | null): number {
  if (a === b) return 0
  if (a === null) return -1
  if (b === null) return 1
  return a < b ? -1 : 1
}
