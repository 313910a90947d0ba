import { ok, type Result, refuse } from '@almanac/units/result'
import loadHighs from 'highs'

/** A bed that may be rebedded in one of the coming months. */
export interface LevelledBed {
  readonly id: string
  readonly crewHours: number
  /** Chance of having failed before the end of each month, from the first on. */
  readonly failedBy: ArrayLike<number>
  /** First month in which it may be done: earlier would throw good resin away. Default 0. Gives way to the risk limit. */
  readonly firstMonth?: number
}

export interface LevelLimits {
  /** Hours the crews can give rebeds in each month. */
  readonly capacityHours: readonly number[]
  /** The owner's limit: no bed is to wait beyond the month in which its chance of having failed passes this, 0 to 1. */
  readonly riskLimit: number
}

export interface LevelPlan {
  /** Month (0 the first) of each bed by id; null: it may wait beyond the months looked at. */
  readonly months: ReadonlyMap<string, number | null>
  /** First and last month in which each bed that has one may be done, by id. */
  readonly allowed: ReadonlyMap<string, { readonly first: number; readonly last: number }>
  readonly hours: readonly number[]
  /** Hours beyond capacity that the risk limit asks for, by month; zero where it can be kept. */
  readonly overtimeHours: readonly number[]
  /** Proven: no other plan within the same hours has fewer failures while waiting by more than this share. */
  readonly gap: number
}

/** Costs an hour of overtime so many chances of failure: capacity gives way only when the risk limit leaves no other month. */
const OVERTIME_WEIGHT = 1000

/** Costs the overtime of the worst month as much as so many hours of any: what cannot be avoided is spread, not heaped into one month. */
const PEAK_WEIGHT = 10

/** After so long the best found so far is taken. */
const PATIENCE_SECONDS = 10

/** Failures while waiting are proven least to within one part in a thousand; the last of it takes most of the time. */
const GAP = 1e-3

/** More beds than this are not all given to the mixed-integer programme at once: it would run for hours to gain a few parts in a thousand, unless hours are short. */
const ALL_AT_ONCE = 60

/** What a bed cut into fractions falls short of. */
const WHOLE = 1 - 1e-6

const NOT_LEVELLED = 'We couldn’t spread the rebeds with these hours. Check the crew hours and try again.'

/**
 * Spreads rebeds over months: each bed that reaches the risk limit within them gets one month no later than that, hours stay within capacity where at all
 * possible, what overtime is left is spread evenly, and the expected failures while waiting are least, within a gap that is proven and answered. Linear programmes for
 * the overtime and for beds cut into fractions, then mixed-integer ones for whole beds, all solved by HiGHS: 1,000 due beds over 60 months take about five seconds.
 */
export async function levelRebeds(beds: readonly LevelledBed[], limits: LevelLimits): Promise<Result<LevelPlan>> {
  const count = limits.capacityHours.length
  if (count === 0 || !limits.capacityHours.every((hours) => hours >= 0))
    return refuse('Enter the crew hours for each month, none below zero.')
  if (!(limits.riskLimit > 0 && limits.riskLimit <= 1)) return refuse('The risk limit must be between 0 and 100%.')
  const due: DueBed[] = []
  const months = new Map<string, number | null>()
  let gap = 0
  for (const bed of beds) {
    if (!(bed.crewHours > 0) || bed.failedBy.length < count)
      return refuse(`The bed ${bed.id} lacks crew hours or a forecast for ${count} months.`)
    let last = 0
    while (last < count && (bed.failedBy[last] as number) <= limits.riskLimit) last++
    months.set(bed.id, null)
    // The limit is passed by the end of month `last`; a bed already beyond it is due at once.
    if (last < count) due.push({ bed, first: Math.min(bed.firstMonth ?? 0, last), last })
  }
  if (due.length > 0) {
    const solver = await loadHighs()
    const least = solver.solve(overtimeProgramme(due, limits.capacityHours))
    if (least.Status !== 'Optimal') return refuse(NOT_LEVELLED)
    const tight = limits.capacityHours.map((capacity, m) => capacity + Math.max(0, least.Columns[`o${m}`]?.Primal ?? 0))
    const found = wholeBeds(solver, due, tight, limits.capacityHours)
    if (found === null) return refuse(NOT_LEVELLED)
    for (const [id, month] of found.months) months.set(id, month)
    gap = found.gap
  }
  const hours = new Array<number>(count).fill(0)
  for (const { bed } of due) {
    const month = months.get(bed.id)
    if (month !== null && month !== undefined) hours[month] = (hours[month] as number) + bed.crewHours
  }
  const allowed = new Map(due.map(({ bed, first, last }) => [bed.id, { first, last }]))
  return ok({ months, allowed, hours, gap, overtimeHours: hours.map((used, m) => Math.max(0, used - (limits.capacityHours[m] as number))) })
}

type Solver = Awaited<ReturnType<typeof loadHighs>>

/**
 * A month for each whole bed. Cut into fractions, nearly all beds have one month already and no plan is better: those keep it, and the few that were cut are placed by a
 * mixed-integer programme in the hours left. Where that is not proven good enough, all of them are.
 */
function wholeBeds(
  solver: Solver,
  due: readonly DueBed[],
  tight: readonly number[],
  capacity: readonly number[],
): { months: Map<string, number>; gap: number } | null {
  const relaxed = solver.solve(programme(due, tight, false))
  if (relaxed.Status !== 'Optimal') return null
  // One rebed's room beside the overtime that fractions of beds would need: whole beds seldom fit tighter.
  const room = Math.min(...due.map(({ bed }) => bed.crewHours))
  const hours = tight.map((most, m) => (most - (capacity[m] as number) > 1e-6 ? most + room : most))
  const months = new Map<string, number>()
  const left = [...hours]
  const cut: DueBed[] = []
  due.forEach((one, i) => {
    let month = one.first
    while (month <= one.last && (relaxed.Columns[`x${i}_${month}`]?.Primal ?? 0) < WHOLE) month++
    if (month > one.last) cut.push(one)
    else {
      months.set(one.bed.id, month)
      left[month] = (left[month] as number) - one.bed.crewHours
    }
  })
  const gap = (of: ReadonlyMap<string, number> = months) => {
    const cost = due.reduce((sum, one) => sum + waiting(one, of.get(one.bed.id) ?? 0), 0)
    return cost <= 0 ? 0 : Math.max(0, 1 - relaxed.ObjectiveValue / cost)
  }
  const few = place(solver, cut, left, months)
  if (few !== null && few.overtime < 1e-6 && (due.length > ALL_AT_ONCE || gap() <= GAP)) return { months, gap: gap() }
  const kept = new Map(months)
  const all = place(solver, due, hours, months)
  if (few === null && all === null) return null
  // Nothing found in time, or no fewer hours too many: what the few gave stands.
  if (few !== null && (all === null || all.overtime > few.overtime)) return { months: kept, gap: gap(kept) }
  return { months, gap: all?.proven ? Math.min(GAP, gap()) : gap() }
}

/** Puts whole beds into `months` by a mixed-integer programme; answers the hours beyond those given and whether it is proven best, null where none was found in time. */
function place(
  solver: Solver,
  beds: readonly DueBed[],
  hours: readonly number[],
  months: Map<string, number>,
): { overtime: number; proven: boolean } | null {
  if (beds.length === 0) return { overtime: 0, proven: true }
  const solution = solver.solve(programme(beds, hours, true), { time_limit: PATIENCE_SECONDS, mip_rel_gap: GAP })
  const primal = (name: string) => {
    const column = solution.Columns[name]
    return column !== undefined && 'Primal' in column ? column.Primal : 0
  }
  const chosen = beds.map(({ first, last }, i) => {
    for (let m = first; m <= last; m++) if (primal(`x${i}_${m}`) > 0.5) return m
    return null
  })
  if (chosen.includes(null)) return null
  beds.forEach(({ bed }, i) => {
    months.set(bed.id, chosen[i] as number)
  })
  const overtime = hours.reduce((sum, _, m) => sum + primal(`o${m}`), 0)
  return { overtime, proven: solution.Status === 'Optimal' }
}

/** Chance of failing before month `m`: done then, it may have failed while waiting. */
const waiting = ({ bed }: DueBed, m: number) => (m === 0 ? 0 : (bed.failedBy[m - 1] as number))

/** A bed that reaches the limit within the months, with the months in which it may be done. */
interface DueBed {
  readonly bed: LevelledBed
  readonly first: number
  readonly last: number
}

/** Terms of each bed's months: that it is done once, the hours it takes from each month, what waiting costs. */
function terms(due: readonly DueBed[], months: number) {
  const load = Array.from({ length: months }, () => [] as string[])
  const once: string[] = []
  const names: string[] = []
  const cost: string[] = []
  due.forEach((one, i) => {
    const { bed, first, last } = one
    const own: string[] = []
    for (let m = first; m <= last; m++) {
      const name = `x${i}_${m}`
      own.push(name)
      const chance = waiting(one, m)
      if (chance > 0) cost.push(`${chance.toFixed(9)} ${name}`)
      load[m]?.push(`${bed.crewHours} ${name}`)
    }
    names.push(...own)
    once.push(`b${i}: ${own.join(' + ')} = 1`)
  })
  const used = load.flatMap((hours, m) => (hours.length === 0 ? [] : [m]))
  const within = (capacity: readonly number[]) => used.map((m) => `m${m}: ${load[m]?.join(' + ')} - o${m} <= ${capacity[m]}`)
  return { once, names, cost, used, within }
}

/** Least overtime, evenly spread, with beds cut into fractions: a linear programme in LP format. */
function overtimeProgramme(due: readonly DueBed[], capacity: readonly number[]): string {
  const { once, used, within } = terms(due, capacity.length)
  const peak = used.map((m) => `p${m}: o${m} - peak <= 0`)
  const rows = [...once, ...within(capacity), ...peak].join('\n ')
  return `Minimize\n obj: ${[...used.map((m) => `o${m}`), `${PEAK_WEIGHT} peak`].join(' + ')}\nSubject To\n ${rows}\nEnd\n`
}

/** Least failures while waiting: x = 1 where bed i is done in month m (or, unless `whole`, a fraction of it), o the hours of a month beyond its capacity. */
function programme(due: readonly DueBed[], capacity: readonly number[], whole: boolean): string {
  const { once, names, cost, used, within } = terms(due, capacity.length)
  const objective = [...cost, ...used.map((m) => `${OVERTIME_WEIGHT} o${m}`)].join(' + ')
  return `Minimize\n obj: ${objective}\nSubject To\n ${[...once, ...within(capacity)].join('\n ')}${whole ? `\nBinary\n ${names.join(' ')}` : ''}\nEnd\n`
}
