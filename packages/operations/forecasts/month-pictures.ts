import { type GroupCounter, groupCounter } from '@almanac/forecast/fleet/group-counts'
import { countMonths, type MonthCounter } from '@almanac/forecast/fleet/month-counts'
import { PARAMETER_NODES } from '@almanac/forecast/priors/parameter-nodes'
import { CHANCE_PARTS, STORED_LENGTH, STORED_MONTHS } from './bed-months.ts'

export const YEAR = 12

/** Years of the picture, each with the count of its twelve months together. */
const YEARS = STORED_MONTHS / YEAR

export type Grouping = 'supply' | 'area' | 'resin'

/** A group of its own in the picture needs enough beds for a band to say something. */
const BEDS_FOR_A_PICTURE = 20

/** Groups of one kind that are told apart, the largest: more could not be read, nor held in memory. */
const MOST_GROUPS = 60

type Pair<C> = { months: C; years: C }

/** The month pictures being summed: of the company, and of its groups of each kind. */
export type Pictures = {
  beds: number
  all: Pair<MonthCounter>
  groups: Record<Grouping, Pair<GroupCounter>>
  own: Record<Grouping, Set<string>>
}

const pair = <C>(make: (months: number) => C): Pair<C> => ({ months: make(STORED_MONTHS), years: make(YEARS) })

/** Empty pictures; groups too small for one of their own are counted together under null. `sizes` largest first. */
export function emptyPictures(sizes: readonly { by: Grouping; key: string; beds: number }[]): Pictures {
  const own = (by: Grouping) =>
    new Set(
      sizes
        .filter((one) => one.by === by && one.beds >= BEDS_FOR_A_PICTURE)
        .slice(0, MOST_GROUPS)
        .map((one) => one.key),
    )
  return {
    beds: 0,
    all: pair(countMonths),
    groups: { supply: pair(groupCounter), area: pair(groupCounter), resin: pair(groupCounter) },
    own: { supply: own('supply'), area: own('area'), resin: own('resin') },
  }
}

const nodeMonths = new Float64Array(STORED_LENGTH)
const nodeYears = new Float64Array(PARAMETER_NODES * YEARS)

export type PicturedBed = { chances: Uint16Array; chanceAlreadyFailed: number; keys: Record<Grouping, string | null> }

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
  const months = { monthChances, nodeMonthChances: nodeMonths }
  const years = { monthChances: yearChances, nodeMonthChances: nodeYears }
  pictures.beds += 1
  pictures.all.months.add(months)
  pictures.all.years.add(years)
  for (const by of ['supply', 'area', 'resin'] as const) {
    const key = keys[by]
    const group = key !== null && pictures.own[by].has(key) ? key : null
    pictures.groups[by].months.add({ ...months, group, chanceAlreadyFailed })
    pictures.groups[by].years.add({ ...years, group, chanceAlreadyFailed })
  }
}
