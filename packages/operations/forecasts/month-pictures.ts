import { type GroupCounter, type GroupCounts, groupCounter } from '@almanac/forecast/fleet/group-counts'
import { PARAMETER_NODES } from '@almanac/forecast/priors/parameter-nodes'
import type { DueGrouping } from '@almanac/records/forecast-run'
import { CHANCE_PARTS, STORED_LENGTH, STORED_MONTHS } from './bed-months.ts'

export const YEAR = 12

/** Years of the picture, each with the count of its twelve months together. */
const YEARS = STORED_MONTHS / YEAR

/** A group of its own in the picture needs enough beds for a band to say something. */
const BEDS_FOR_A_PICTURE = 20

/** Groups of one kind that are told apart, the largest: more could not be read, nor held in memory. */
const MOST_GROUPS = 60

type Pair<T> = { months: T; years: T }

/** The beds counted once, each in its cell of supply, town and kind of resin, and which groups are told apart. */
export type Pictures = { cells: Pair<GroupCounter>; own: Record<DueGrouping, Set<string>> }

/** Empty pictures; groups too small for one of their own are counted together under null. `sizes` largest first. */
export function emptyPictures(sizes: readonly { by: DueGrouping; key: string; beds: number }[]): Pictures {
  const own = (by: DueGrouping) =>
    new Set(
      sizes
        .filter((one) => one.by === by && one.beds >= BEDS_FOR_A_PICTURE)
        .slice(0, MOST_GROUPS)
        .map((one) => one.key),
    )
  return {
    cells: { months: groupCounter(STORED_MONTHS), years: groupCounter(YEARS) },
    own: { supply: own('supply'), area: own('area'), resin: own('resin') },
  }
}

/** The company's picture, null without a bed. */
export function wholePicture({ cells }: Pictures): Pair<GroupCounts> | null {
  const [months] = cells.months.regroup(() => null).counts()
  const [years] = cells.years.regroup(() => null).counts()
  return months && years ? { months, years } : null
}

/** The pictures of one kind of group, largest first. */
export function groupPictures({ cells }: Pictures, by: DueGrouping): Pair<GroupCounts>[] {
  const of = (cell: string | null) => (JSON.parse(cell ?? '{}') as Partial<Record<DueGrouping, string | null>>)[by] ?? null
  const years = new Map(
    cells.years
      .regroup(of)
      .counts()
      .map((one) => [one.group, one]),
  )
  return cells.months
    .regroup(of)
    .counts()
    .flatMap((months) => {
      const own = years.get(months.group)
      return own ? [{ months, years: own }] : []
    })
}

const nodeMonths = new Float64Array(STORED_LENGTH)
const nodeYears = new Float64Array(PARAMETER_NODES * YEARS)

export type PicturedBed = { chances: Uint16Array; chanceAlreadyFailed: number; keys: Record<DueGrouping, string | null> }

/** Adds a bed: its chances by month and by year, at each node and averaged over them. */
export function addToPictures(pictures: Pictures, { chances, chanceAlreadyFailed, keys }: PicturedBed): void {
  const monthChances = new Float64Array(STORED_MONTHS)
  const yearChances = new Float64Array(YEARS)
  nodeYears.fill(0)
  for (let node = 0; node < PARAMETER_NODES; node++)
    for (let month = 0; month < STORED_MONTHS; month++) {
      const at = node * STORED_MONTHS + month
      const chance = (chances[at] ?? 0) / CHANCE_PARTS
      const year = Math.floor(month / YEAR)
      nodeMonths[at] = chance
      monthChances[month] = (monthChances[month] ?? 0) + chance / PARAMETER_NODES
      yearChances[year] = (yearChances[year] ?? 0) + chance / PARAMETER_NODES
      nodeYears[node * YEARS + year] = Math.min(1, (nodeYears[node * YEARS + year] ?? 0) + chance)
    }
  const known = (by: DueGrouping) => {
    const key = keys[by]
    return key !== null && pictures.own[by].has(key) ? key : null
  }
  const group = JSON.stringify({ supply: known('supply'), area: known('area'), resin: known('resin') })
  pictures.cells.months.add({ group, chanceAlreadyFailed, monthChances, nodeMonthChances: nodeMonths })
  pictures.cells.years.add({ group, chanceAlreadyFailed, monthChances: yearChances, nodeMonthChances: nodeYears })
}
