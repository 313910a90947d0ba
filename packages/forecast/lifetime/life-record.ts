/**
 * One life as it is on record, in any unit of time. A failure at a known age: lower = upper. Between two inspections: lower < upper. Still working when
 * last seen: upper = Infinity, lower the age then. First seen at age `entry` (left truncation): it could not have been seen had it failed earlier.
 */
export interface LifeRecord {
  readonly lower: number
  readonly upper: number
  /** 0 when followed from the start. */
  readonly entry?: number
  /** How many identical lives this stands for; 1 when left out. */
  readonly weight?: number
  /** Values of the model's covariates, in its order. */
  readonly covariates?: ArrayLike<number>
}

/** The sentence for a record that contradicts itself; null for a good one. */
export function recordFault({ lower, upper, entry = 0, weight = 1 }: LifeRecord): string | null {
  if (!(lower >= 0) || !(upper >= lower) || lower === Number.POSITIVE_INFINITY) return `its life reads from ${lower} to ${upper}`
  if (upper === 0) return 'it ended at age nought'
  if (!(entry >= 0) || entry > lower) return `it was first seen at age ${entry}, later than ${lower}`
  if (!(weight >= 0) || weight === Number.POSITIVE_INFINITY) return `its weight reads ${weight}`
  return null
}
