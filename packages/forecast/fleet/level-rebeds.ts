import { ok, type Result, refuse } from '@almanac/units/result'
import loadHighs from 'highs'

/** A bed that may be rebedded in one of the coming months. */
export interface LevelledBed {
  readonly id: string
  readonly crewHours: number
  /** Chance of having failed before the end of each month, from the first on. */
  readonly failedBy: ArrayLike<number>
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

/**
 * Spreads rebeds over months: each bed that reaches the risk limit within them gets one month no later than that, hours stay within capacity where at all
 * possible, and the expected failures while waiting are least. Exact: a mixed-integer programme solved by HiGHS.
 */
export async function levelRebeds(beds: readonly LevelledBed[], limits: LevelLimits): Promise<Result<LevelPlan>> {
  const count = limits.capacityHours.length
  if (count === 0 || !limits.capacityHours.every((hours) => hours >= 0))
    return refuse('Give the hours the crews have in each month, none below nought.')
  if (!(limits.riskLimit > 0 && limits.riskLimit <= 1)) return refuse('The risk limit must lie between 0 and 100 %.')
  const due: { bed: LevelledBed; last: number }[] = []
  const months = new Map<string, number | null>()
  for (const bed of beds) {
    if (!(bed.crewHours > 0) || bed.failedBy.length < count)
      return refuse(`The bed ${bed.id} lacks crew hours or a forecast for ${count} months.`)
    let last = 0
    while (last < count && (bed.failedBy[last] as number) <= limits.riskLimit) last++
    months.set(bed.id, null)
    // The limit is passed by the end of month `last`; a bed already beyond it is due at once.
    if (last < count) due.push({ bed, last })
  }
  if (due.length > 0) {
    const solver = await loadHighs()
    const solution = solver.solve(programme(due, limits.capacityHours))
    if (solution.Status !== 'Optimal')
      return refuse('The months could not be levelled with these hours. Check the crew hours and try again.')
    due.forEach(({ bed, last }, i) => {
      for (let m = 0; m <= last; m++) if ((solution.Columns[`x${i}_${m}`]?.Primal ?? 0) > 0.5) months.set(bed.id, m)
    })
  }
  const hours = new Array<number>(count).fill(0)
  for (const { bed } of due) {
    const month = months.get(bed.id)
    if (month !== null && month !== undefined) hours[month] = (hours[month] as number) + bed.crewHours
  }
  return ok({ months, hours, overtimeHours: hours.map((used, m) => Math.max(0, used - (limits.capacityHours[m] as number))) })
}

/** The programme in LP format: x = 1 where bed i is done in month m, o the overtime of a month. */
function programme(due: readonly { bed: LevelledBed; last: number }[], capacity: readonly number[]): string {
  const cost: string[] = []
  const once: string[] = []
  const binaries: string[] = []
  const load = capacity.map(() => [] as string[])
  due.forEach(({ bed, last }, i) => {
    const names: string[] = []
    for (let m = 0; m <= last; m++) {
      const name = `x${i}_${m}`
      names.push(name)
      binaries.push(name)
      // Done in month m, it may still fail before that month.
      const waiting = m === 0 ? 0 : (bed.failedBy[m - 1] as number)
      if (waiting > 0) cost.push(`${waiting.toFixed(9)} ${name}`)
      load[m]?.push(`${bed.crewHours} ${name}`)
    }
    once.push(`b${i}: ${names.join(' + ')} = 1`)
  })
  const rows = load.flatMap((terms, m) => (terms.length === 0 ? [] : [`m${m}: ${terms.join(' + ')} - o${m} <= ${capacity[m]}`]))
  const overtime = load.flatMap((terms, m) => (terms.length === 0 ? [] : [`${OVERTIME_WEIGHT} o${m}`]))
  return `Minimize\n obj: ${[...cost, ...overtime].join(' + ')}\nSubject To\n ${[...once, ...rows].join('\n ')}\nBinary\n ${binaries.join(' ')}\nEnd\n`
}
