import { kaplanMeier, type SurvivalStep, survivalAt } from '../lifetime/kaplan-meier.ts'
import { failedBy, type Outcome } from './outcome.ts'

/**
 * Inverse-probability-of-censoring weights (Graf et al. 1999): the chance of still being watched so many days after the origin, by Kaplan–Meier with the
 * roles of failing and of being lost from sight exchanged.
 */
export function watching(outcomes: readonly Outcome[], origin: number): SurvivalStep[] {
  return kaplanMeier(
    outcomes.map(({ after, by }) =>
      by === Number.POSITIVE_INFINITY
        ? { age: Math.max(0, after - origin), failed: true, entry: -1 }
        : { age: Math.max(0, by - origin), failed: false, entry: -1 },
    ),
  )
}

export interface ScoredBed {
  readonly outcome: Outcome
  /** Forecast chance of having failed by the day scored. */
  readonly chance: number
}

export interface WeightedScore {
  /** Sum of weighted squared errors and of weights, so that origins can be added up. */
  readonly sum: number
  readonly weight: number
}

/** Brier score of chances for one day, weighted for censoring; beds lost from sight earlier carry their weight through those still watched. */
export function brierScore(beds: readonly ScoredBed[], watch: readonly SurvivalStep[], origin: number, day: number): WeightedScore {
  let sum = 0
  let weight = 0
  for (const { outcome, chance } of beds) {
    const failed = failedBy(outcome, day)
    if (failed === null) continue
    // A failure's weight is taken just before it, a survivor's on the day.
    const until = outcome.by <= day ? outcome.by - origin - 0.5 : day - origin - 0.5
    const stillWatched = Math.max(survivalAt(watch, until), 0.05)
    sum += (failed * (1 - chance) ** 2 + (1 - failed) * chance ** 2) / stillWatched
    weight += 1 / stillWatched
  }
  return { sum, weight }
}
