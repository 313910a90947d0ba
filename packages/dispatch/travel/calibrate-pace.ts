import { circuity, freeMinutes, rushFactor } from './estimate-drive.ts'
import { type Place, straightMiles } from './great-circle.ts'
import type { TravelModel } from './travel-model.ts'

/** One drive of the firm's own: from leaving one site to beginning at the next. */
export type ObservedDrive = { from: Place; to: Place; minuteOfDay: number; minutes: number }

export type Pace = { pace: number; drives: number; sentence: string }

/** How many drives the usual pace is worth: with ten of its own, a firm stands half-way. */
const PRIOR_DRIVES = 10
/** A stretch longer than this held a meal, an errand or a day's end. */
const MOST_MINUTES = 180
/** Too short to tell anything of the roads. */
const LEAST_MILES = 0.5
const SLOWEST = 2.5
const FASTEST = 0.5

/**
 * How the firm's drives compare with the model's, from its own close-outs: the median of the log ratios, drawn towards 1 by the weight of ten drives. The median,
 * since half an hour for lunch is in some of them. Drives that say nothing are left out.
 */
export function calibratePace(observed: readonly ObservedDrive[], model: TravelModel): Pace {
  const plain = { ...model, pace: 1 }
  const logs = observed.flatMap(({ from, to, minuteOfDay, minutes }) => {
    const straight = straightMiles(from, to)
    const moving = minutes / rushFactor(minuteOfDay, plain) - plain.stopMinutes
    if (!(straight >= LEAST_MILES) || !(minutes <= MOST_MINUTES) || !(moving > 0)) return []
    const expected = freeMinutes(straight * circuity(straight, plain), plain) - plain.stopMinutes
    return [Math.log(moving / expected)]
  })
  if (logs.length === 0) return { pace: 1, drives: 0, sentence: 'No drive of the firm’s own is on record yet: the usual speeds stand.' }
  const middle = median(logs) * (logs.length / (logs.length + PRIOR_DRIVES))
  const pace = Math.min(SLOWEST, Math.max(FASTEST, Math.exp(middle)))
  const percent = Math.round(Math.abs(pace - 1) * 100)
  const words = percent === 0 ? 'as long as usual' : `${percent} % ${pace > 1 ? 'longer' : 'shorter'} than usual`
  return { pace, drives: logs.length, sentence: `By ${logs.length} of the firm’s own drives, a drive takes ${words}.` }
}

function median(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length >> 1
  const upper = sorted[half] ?? 0
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? upper) + upper) / 2
}
