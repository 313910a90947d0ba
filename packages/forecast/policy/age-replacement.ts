import { ok, type Result, refuse } from '@almanac/units/result'

/** What the firm pays, in one currency's minor units. */
export interface ReplacementCosts {
  /** A rebed booked in good time. */
  readonly planned: number
  /** A rebed after a failure: the call-out, the goodwill, the hurry. */
  readonly failure: number
  /** Beads in the plumbing: the share of failures that come with them, and what one costs on top. */
  readonly beadsShare: number
  readonly beads: number
}

export interface CostPoint {
  readonly ageYears: number
  readonly costPerYear: number
}

export interface ReplacementPolicy {
  readonly curve: readonly CostPoint[]
  /** Cheapest age to replace at; null when waiting for the failure is cheapest. */
  readonly best: CostPoint | null
  /** Ages whose cost lies within 5% of the best: the due window, since the curve is flat there. */
  readonly window: { readonly fromYears: number; readonly toYears: number } | null
  readonly runToFailureCostPerYear: number
  /** Saved each year and bed by the best age against waiting for the failure, and against a fixed age; never negative against the former. */
  readonly savedAgainstRunToFailure: number
  readonly savedAgainstFixedAge: number | null
}

const STEPS_PER_YEAR = 24
const WINDOW = 1.05

/**
 * Age replacement (Barlow and Hunter 1960): cost per year of replacing at age T or at failure, whichever comes first,
 * [planned · S(T) + failure · (1 − S(T))] / ∫₀ᵀ S. `survival` is a new bed's chance of lasting so many years, doubt about parameters averaged in.
 */
export function ageReplacement(
  survival: (years: number) => number,
  costs: ReplacementCosts,
  fixedAgeYears?: number,
): Result<ReplacementPolicy> {
  const fault = costFault(costs)
  if (fault !== null) return refuse(fault)
  const failure = costs.failure + costs.beadsShare * costs.beads
  const points: CostPoint[] = []
  const lived = [0]
  const alive = [1]
  // Up to where hardly a bed is left; Simpson over each step keeps the integral to 1e-8.
  for (let i = 1; i <= 200 * STEPS_PER_YEAR && (alive[i - 1] as number) > 1e-9; i++) {
    const step = 1 / STEPS_PER_YEAR
    const end = survival(i * step)
    const middle = survival((i - 0.5) * step)
    if (!(end >= 0 && end <= 1)) return refuse('The survival curve has a value that isn’t a chance, so nothing was calculated.')
    lived.push((lived[i - 1] as number) + (step * ((alive[i - 1] as number) + 4 * middle + end)) / 6)
    alive.push(end)
    points.push({ ageYears: i * step, costPerYear: (costs.planned * end + failure * (1 - end)) / (lived[i] as number) })
  }
  const runToFailure = failure / (lived.at(-1) as number)
  let least = 0
  points.forEach((point, i) => {
    if (point.costPerYear < (points[least] as CostPoint).costPerYear) least = i
  })
  const best = refined(points, least)
  // A curve still falling at its end means that replacing early never pays.
  if (best === null || best.costPerYear >= runToFailure * (1 - 1e-6)) {
    return ok({
      curve: points,
      best: null,
      window: null,
      runToFailureCostPerYear: runToFailure,
      savedAgainstRunToFailure: 0,
      savedAgainstFixedAge: null,
    })
  }
  const inWindow = points.filter((point) => point.costPerYear <= best.costPerYear * WINDOW)
  const fixed = fixedAgeYears === undefined ? undefined : points.find((point) => point.ageYears >= fixedAgeYears)
  return ok({
    curve: points,
    best,
    window: { fromYears: inWindow[0]?.ageYears ?? best.ageYears, toYears: inWindow.at(-1)?.ageYears ?? best.ageYears },
    runToFailureCostPerYear: runToFailure,
    savedAgainstRunToFailure: runToFailure - best.costPerYear,
    savedAgainstFixedAge: fixedAgeYears === undefined ? null : (fixed?.costPerYear ?? runToFailure) - best.costPerYear,
  })
}

function costFault({ planned, failure, beadsShare, beads }: ReplacementCosts): string | null {
  if (!(planned > 0) || !(failure >= 0) || !(beads >= 0))
    return 'The cost of a planned rebed and of a failure must be above zero. Enter them and try again.'
  if (!(beadsShare >= 0 && beadsShare <= 1)) return 'The share of failures with beads in the plumbing must be between 0 and 100%.'
  return null
}

/** The bottom of the parabola through the least point and its neighbours; null at the edge of the curve. */
function refined(points: readonly CostPoint[], least: number): CostPoint | null {
  const [a, b, c] = [points[least - 1], points[least], points[least + 1]]
  if (a === undefined || b === undefined || c === undefined) return null
  const bend = a.costPerYear - 2 * b.costPerYear + c.costPerYear
  if (!(bend > 0)) return b
  const shift = (a.costPerYear - c.costPerYear) / (2 * bend)
  return { ageYears: b.ageYears + shift / STEPS_PER_YEAR, costPerYear: b.costPerYear - ((a.costPerYear - c.costPerYear) * shift) / 4 }
}
