/**
 * Bayes on one bed's remaining life. `s` is the chance by the records alone of lasting longer, from 1 when last seen to 0; a likelihood of the life turns it into
 * G(s) = ∫₀ˢ ℓ / ∫₀¹ ℓ, the chance with the inspections. ℓ is straight between the knots, so G is smooth to its first derivative.
 */
export interface Tilt {
  readonly value: Float64Array
  readonly slope: Float64Array
  /** ln ∫₀¹ ℓ ds: how well this component foretold what was found. */
  readonly logEvidence: number
}

const REACH = 9
const STEP = 0.5
const INNER = (2 * REACH) / STEP + 1

/** Knots from 0 to 1, even in ln(s/(1 − s)): fine at both ends, where a bed is due at once or has far to go. */
export const KNOTS: Float64Array = Float64Array.from({ length: INNER + 2 }, (_, k) =>
  k === 0 ? 0 : k === INNER + 1 ? 1 : 1 / (1 + Math.exp(REACH - (k - 1) * STEP)),
)

/** From ln ℓ at each knot. */
export function tiltFrom(logLikelihoods: ArrayLike<number>): Tilt {
  const count = KNOTS.length
  let top = Number.NEGATIVE_INFINITY
  for (let k = 0; k < count; k++) top = Math.max(top, logLikelihoods[k] as number)
  const slope = new Float64Array(count)
  const value = new Float64Array(count)
  for (let k = 0; k < count; k++) slope[k] = Math.exp((logLikelihoods[k] as number) - top)
  for (let k = 1; k < count; k++)
    value[k] =
      (value[k - 1] as number) + (((slope[k] as number) + (slope[k - 1] as number)) / 2) * ((KNOTS[k] as number) - (KNOTS[k - 1] as number))
  const total = value[count - 1] as number
  for (let k = 0; k < count; k++) {
    value[k] = (value[k] as number) / total
    slope[k] = (slope[k] as number) / total
  }
  return { value, slope, logEvidence: top + Math.log(total) }
}

/** G(s) into out[0] and dG/ds into out[1]. */
export function tilted(tilt: Tilt, s: number, out: Float64Array): void {
  const place = s <= 0 ? 0 : s >= 1 ? INNER : Math.floor((Math.log(s / (1 - s)) + REACH) / STEP) + 1
  const k = Math.min(INNER, Math.max(0, place))
  const from = KNOTS[k] as number
  const width = (KNOTS[k + 1] as number) - from
  const x = Math.min(Math.max(s - from, 0), width)
  const bend = ((tilt.slope[k + 1] as number) - (tilt.slope[k] as number)) / width
  out[0] = (tilt.value[k] as number) + x * ((tilt.slope[k] as number) + (x * bend) / 2)
  out[1] = (tilt.slope[k] as number) + x * bend
}
