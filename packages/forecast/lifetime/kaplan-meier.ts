/** Right-censored lives with late entry, as Kaplan–Meier takes them. */
export interface ObservedLife {
  readonly age: number
  readonly failed: boolean
  readonly entry?: number
  readonly weight?: number
}

export interface SurvivalStep {
  readonly age: number
  readonly atRisk: number
  readonly failures: number
  readonly survival: number
  /** Standard error of the cumulative hazard (Greenwood): of ln S. */
  readonly standardError: number
}

/**
 * Kaplan–Meier curve with late entry, one step at each age with a failure. Failures come before censorings of the same age; a life entering at an age is not yet
 * at risk there. O(n log n).
 */
export function kaplanMeier(lives: readonly ObservedLife[]): SurvivalStep[] {
  const ends = [...lives].sort((a, b) => a.age - b.age)
  const entries = lives.map(({ entry = 0, weight = 1 }) => ({ entry, weight })).sort((a, b) => a.entry - b.entry)
  const steps: SurvivalStep[] = []
  let entered = 0
  let left = 0
  let next = 0
  let survival = 1
  let variance = 0
  for (let i = 0; i < ends.length; ) {
    const age = (ends[i] as ObservedLife).age
    while (next < entries.length && (entries[next] as { entry: number }).entry < age)
      entered += (entries[next++] as { weight: number }).weight
    let failures = 0
    let leaving = 0
    for (; i < ends.length && (ends[i] as ObservedLife).age === age; i++) {
      const { failed, weight = 1 } = ends[i] as ObservedLife
      leaving += weight
      if (failed) failures += weight
    }
    const atRisk = entered - left
    if (failures > 0) {
      survival *= 1 - failures / atRisk
      // At S = 0 Greenwood's sum is infinite; kept at its last value as survfit's error is undefined there.
      if (atRisk > failures) variance += failures / (atRisk * (atRisk - failures))
      steps.push({ age, atRisk, failures, survival, standardError: Math.sqrt(variance) })
    }
    left += leaving
  }
  return steps
}

/** Survival at an age: the value of the last step at or before it. */
export function survivalAt(steps: readonly SurvivalStep[], age: number): number {
  let low = 0
  let high = steps.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((steps[middle] as SurvivalStep).age <= age) low = middle + 1
    else high = middle
  }
  return low === 0 ? 1 : (steps[low - 1] as SurvivalStep).survival
}
