import { ok, type Result } from '@almanac/units/result'
import type { BedTraits, InletWater } from '../exposure/acceleration.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import { ageReplacement, type CostPoint, type ReplacementCosts, type ReplacementPolicy } from './age-replacement.ts'
import { newBedLives } from './new-bed-survival.ts'

/** A figure with the band of one in ten below and above over the doubt about how long beds last. */
export interface Banded {
  readonly mean: number
  readonly low: number
  readonly high: number
}

export interface ReplacementAnswer {
  /** Every half year of age from 2 on: cost per year, and its band. */
  readonly curve: readonly { readonly ageYears: number; readonly costPerYear: number; readonly low: number; readonly high: number }[]
  /** Cheapest age, and the due window within 5% of its cost; null where waiting for the failure is cheapest. */
  readonly best: CostPoint | null
  readonly window: { readonly fromYears: number; readonly toYears: number } | null
  /** Cheapest ages over the doubt; null where none pays. */
  readonly bestLow: number | null
  readonly bestHigh: number | null
  /** Share of that doubt for which planning ahead is cheaper than waiting. */
  readonly planShare: number
  readonly runToFailurePerYear: number
  readonly fixedAgePerYear: number
  /** Saved a year and bed by the best age, as found on average, under each possible life: may be negative where that life would have asked for another age. */
  readonly savedAgainstRunToFailure: Banded
  readonly savedAgainstFixedAge: Banded
  readonly medianLifeYears: number
}

const CURVE_FROM = 2
const CURVE_POINTS = 49

/**
 * When it is cheapest to rebed a bed put in on such water, by cost a year over its life (Barlow and Hunter 1960), with the doubt about how long beds last carried
 * through; costs in one currency's minor units. `supply` takes that supply's own effect. Refuses costs that are none. About 30 ms.
 */
export function whenToReplace(
  traits: BedTraits,
  water: InletWater,
  parameters: ForecastParameters,
  costs: ReplacementCosts,
  fixedAgeYears: number,
  supply: string | null = null,
): Result<ReplacementAnswer> {
  const lives = newBedLives(traits, water, parameters, supply)
  const all = (years: number) => lives.reduce((sum, life) => sum + life(years), 0) / lives.length
  const mean = ageReplacement(all, costs, fixedAgeYears)
  if (!mean.ok) return mean
  const each = lives.flatMap((life) => {
    const policy = ageReplacement(life, costs)
    return policy.ok ? [policy.value] : []
  })
  const ages = each.flatMap(({ best }) => (best === null ? [] : [best.ageYears])).sort((a, b) => a - b)
  const chosen = mean.value.best?.ageYears ?? null
  const atBest = (policy: ReplacementPolicy) => (chosen === null ? policy.runToFailureCostPerYear : costAt(policy, chosen))
  const banded = (of: (policy: ReplacementPolicy) => number): Banded => {
    const sorted = each.map(of).sort((a, b) => a - b)
    return { mean: of(mean.value), low: quantile(sorted, 0.1) ?? of(mean.value), high: quantile(sorted, 0.9) ?? of(mean.value) }
  }
  const curve = Array.from({ length: CURVE_POINTS }, (_, i) => CURVE_FROM + i / 2).map((ageYears) => {
    const { mean: costPerYear, low, high } = banded((policy) => costAt(policy, ageYears))
    return { ageYears, costPerYear, low, high }
  })
  return ok({
    curve,
    best: mean.value.best,
    window: mean.value.window,
    bestLow: quantile(ages, 0.1),
    bestHigh: quantile(ages, 0.9),
    planShare: ages.length / Math.max(1, each.length),
    runToFailurePerYear: mean.value.runToFailureCostPerYear,
    fixedAgePerYear: costAt(mean.value, fixedAgeYears),
    savedAgainstRunToFailure: banded((policy) => policy.runToFailureCostPerYear - atBest(policy)),
    savedAgainstFixedAge: banded((policy) => costAt(policy, fixedAgeYears) - atBest(policy)),
    medianLifeYears: medianOf(all),
  })
}

/** Cost per year of replacing at an age; beyond the last bed's life, that of waiting. */
function costAt(policy: ReplacementPolicy, age: number): number {
  return policy.curve.find((point) => point.ageYears >= age - 1e-9)?.costPerYear ?? policy.runToFailureCostPerYear
}

function quantile(sorted: readonly number[], p: number): number | null {
  return sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))] ?? null
}

function medianOf(survival: (years: number) => number): number {
  let [low, high] = [0, 200]
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2
    if (survival(middle) > 0.5) low = middle
    else high = middle
  }
  return (low + high) / 2
}
