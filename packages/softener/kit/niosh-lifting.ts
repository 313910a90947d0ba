import { ok, type Result, refuse } from '@almanac/units/result'

export type Coupling = 'good' | 'fair' | 'poor'

/** One lift; inches, degrees, pounds. `horizontalIn` is hands to ankles, `verticalIn` hands above the floor at the start. */
export type Lift = {
  weightLb: number
  horizontalIn: number
  verticalIn: number
  travelIn: number
  asymmetryDeg?: number
  liftsPerMinute?: number
  coupling: Coupling
}

export type LiftingIndex = {
  recommendedWeightLb: number
  /** Weight over the recommended limit; null where the limit is zero. */
  index: number | null
  multipliers: { horizontal: number; vertical: number; distance: number; asymmetry: number; frequency: number; coupling: number }
  advice: string
}

/** Load constant of the revised NIOSH equation, lb. */
const LOAD_CONSTANT_LB = 51
const SOURCE = 'NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation'
/** What the equation leaves out, always shown beside its result. */
const NIOSH_LIMITS =
  'The equation does not cover stairs, slippery floors, one-handed or team lifts; it gives a recommended limit, not permission.'

type Point = readonly [perMinute: number, multiplier: number]
/** Frequency multipliers for work of up to an hour with the hands below 30 in (NIOSH 94-110 Table 5). */
const FREQUENCY: readonly [Point, ...Point[]] = [
  [0.2, 1],
  [0.5, 0.97],
  [1, 0.94],
  [2, 0.91],
  [3, 0.88],
  [4, 0.84],
  [5, 0.8],
]

/**
 * Recommended weight limit and lifting index, RWL = 51·HM·VM·DM·AM·FM·CM in pounds and inches. A limit of zero is given where the
 * equation gives zero (hands further than 25 in, twist beyond 135°, hands above 70 in or travel above 70 in); never extrapolated.
 */
export function nioshLifting(lift: Lift): Result<LiftingIndex> {
  const { weightLb, horizontalIn, verticalIn, travelIn, coupling } = lift
  const asymmetryDeg = lift.asymmetryDeg ?? 0
  const perMinute = lift.liftsPerMinute ?? 0.2
  if (!(weightLb > 0)) return refuse('The weight to lift is not known, so no lifting index can be given.')
  if (!(horizontalIn >= 0 && verticalIn >= 0 && travelIn >= 0 && asymmetryDeg >= 0 && perMinute >= 0)) {
    return refuse('Distances, twist and lifts a minute must be zero or more; check the numbers for this lift.')
  }
  const frequency = frequencyMultiplier(perMinute)
  if (frequency === null) return refuse('More than 5 lifts a minute is outside the frequencies kept here; slow the work down.')
  const multipliers = {
    horizontal: horizontalIn > 25 ? 0 : 10 / Math.max(10, horizontalIn),
    vertical: verticalIn > 70 ? 0 : 1 - 0.0075 * Math.abs(verticalIn - 30),
    distance: travelIn > 70 ? 0 : Math.min(1, 0.82 + 1.8 / Math.max(10, travelIn)),
    asymmetry: asymmetryDeg > 135 ? 0 : 1 - 0.0032 * asymmetryDeg,
    frequency,
    coupling: couplingMultiplier(coupling, verticalIn),
  }
  const { horizontal, vertical, distance, asymmetry, coupling: grip } = multipliers
  const recommendedWeightLb = LOAD_CONSTANT_LB * horizontal * vertical * distance * asymmetry * frequency * grip
  const index = recommendedWeightLb > 0 ? weightLb / recommendedWeightLb : null
  return ok({ recommendedWeightLb, index, multipliers, advice: adviceFor(index) }, { assumptions: [NIOSH_LIMITS], sources: [SOURCE] })
}

/** Linear between the listed frequencies, as the manual allows; null above the list. */
function frequencyMultiplier(perMinute: number): number | null {
  let [belowAt, below] = FREQUENCY[0]
  if (perMinute <= belowAt) return below
  for (const [at, value] of FREQUENCY) {
    if (perMinute <= at) return below + ((value - below) * (perMinute - belowAt)) / (at - belowAt)
    belowAt = at
    below = value
  }
  return null
}

function couplingMultiplier(coupling: Coupling, verticalIn: number): number {
  if (coupling === 'good') return 1
  if (coupling === 'poor') return 0.9
  return verticalIn < 30 ? 0.95 : 1
}

function adviceFor(index: number | null): string {
  if (index === null) return 'Outside what one person should lift at all: change the lift or use a hoist or cart.'
  if (index <= 1) return 'Within the recommended limit for one person.'
  if (index <= 3) return 'Above the recommended limit: split the load or lift as a team.'
  return 'Far above the recommended limit: not a hand lift; split it, or use a cart or hoist.'
}
