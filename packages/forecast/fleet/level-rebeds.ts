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
  readonly hours: readonly number[]
  /** Hours beyond capacity that the risk limit asks for, by month; zero where it can be kept. */
  readonly overtimeHours: readonly number[]
}

/** Costs an hour of overtime so many chances of failure: capacity gives way only when the risk limit leaves no other month. */
const OVERTIME_WEIGHT = 1000

/** Costs the overtime of the worst month as much as so many hours of any: what cannot be avoided is spread, not heaped into one month. */
const PEAK_WEIGHT = 10

/** After so long an answer that is not proven best is not waited for. */
const PATIENCE_SECONDS = 600

/** Failures while waiting are proven least to within one part in a thousand; the last of it takes most of the time. */
const GAP = 1e-3

const NOT_LEVELLED = 'The months could not be levelled with these hours. Check the crew hours and try again.'

/**
 * Spreads rebeds over months: each bed that reaches the risk limit within them gets one month no later than that, hours stay within capacity where at all
 * possible, what overtime is left is spread evenly, and the expected failures while waiting are least. Exact: a linear programme for the overtime, then a
 * mixed-integer one for the beds, both solved by HiGHS.
 */
export async function levelRebeds(beds: readonly LevelledBed[], limits: LevelLimits): Promise<Result<LevelPlan>> {
  const count = limits.capacityHours.length
  if (count === 0 || !limits.capacityHours.every((hours) => hours >= 0))
    return refuse('Give the hours the crews have in each month, none below nought.')
  if (!(limits.riskLimit > 0 && limits.riskLimit <= 1)) return refuse('The risk limit must lie between 0 and 100 %.')
  const due: DueBed[] = []
  const months = new Map<string, number | null>()
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
    // One rebed's room beside the overtime that fractions of beds would need: whole beds seldom fit tighter, and proving it takes for ever.
    const room = Math.min(...due.map(({ bed }) => bed.crewHours))
    const hours = limits.capacityHours.map((capacity, m) => {
      const over = least.Columns[`o${m}`]?.Primal ?? 0
      return over > 1e-6 ? capacity + over + room : capacity
    })
    const solution = solver.solve(programme(due, hours), { time_limit: PATIENCE_SECONDS, mip_rel_gap: GAP })
    if (solution.Status !== 'Optimal') return refuse(NOT_LEVELLED)
    due.forEach(({ bed, first, last }, i) => {
      for (let m = first; m <= last; m++) if ((solution.Columns[`x${i}_${m}`]?.Primal ?? 0) > 0.5) months.set(bed.id, m)
    })
  }
  const hours = new Array<number>(count).fill(0)
  for (const { bed } of due) {
    const month = months.get(bed.id)
    if (month !== null && month !== undefined) hours[month] = (hours[month] as number) + bed.crewHours
  }
  return ok({ months, hours, overtimeHours: hours.map((used, m) => Math.max(0, used - (limits.capacityHours[m] as number))) })
}

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
  due.forEach(({ bed, first, last }, i) => {
    const own: string[] = []
    for (let m = first; m <= last; m++) {
      const name = `x${i}_${m}`
      own.push(name)
      // Done in month m, it may still fail before that month.
      const waiting = m === 0 ? 0 : (bed.failedBy[m - 1] as number)
      if (waiting > 0) cost.push(`${waiting.toFixed(9)} ${name}`)
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

/** Least failures while waiting, whole beds: x = 1 where bed i is done in month m, o the hours of a month beyond its capacity. */
function programme(due: readonly DueBed[], capacity: readonly number[]): string {
  const { once, names, cost, used, within } = terms(due, capacity.length)
  const objective = [...cost, ...used.map((m) => `${OVERTIME_WEIGHT} o${m}`)].join(' + ')
  return `Minimize\n obj: ${objective}\nSubject To\n ${[...once, ...within(capacity)].join('\n ')}\nBinary\n ${names.join(' ')}\nEnd\n`
}
