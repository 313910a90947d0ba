import type { Settings } from '@almanac/contract/firm'
import type { BoardPrices } from '@almanac/dispatch/propose/board'

/**
 * What a plan weighs against what, in minor units of the firm's currency. The firm's own costs where it has said them; the others are a place to start from:
 * common practice, no source. A working hour in the van, a mile, the trouble of moving a visit that stands.
 */
const USUAL = {
  perDriveHour: 3_000,
  overtimePerHour: 4_500,
  perMile: 70,
  perSheet: 0,
  perMove: 15_000,
  perRetime: 5_000,
  leaveOut: 25_000,
  takeOff: 200_000,
}
/** An hour by which nine of ten days go past their end: dear enough that a visit is moved to another day for twenty minutes of it. Ours, no source. */
const PER_LATE_HOUR = 45_000
const USUAL_FAILURE_EXCESS = 60_000
const QUARTER_DAYS = 91

export function boardPrices({ overtimeMinorPerHour, dayFill }: Pick<Settings, 'overtimeMinorPerHour' | 'dayFill'>): BoardPrices {
  const late = dayFill === 'one-in-ten' ? { perLateHour: PER_LATE_HOUR } : {}
  return { ...USUAL, ...late, overtimePerHour: overtimeMinorPerHour ?? USUAL.overtimePerHour }
}

/** What a day of waiting past the due window costs: the chance that the bed fails on it, times what a failure costs more than a planned rebed. */
export function riskPerDay(chance3Months: number | null, { failureMinor, plannedRebedMinor }: Settings): number {
  const excess = failureMinor === null ? USUAL_FAILURE_EXCESS : Math.max(0, failureMinor - (plannedRebedMinor ?? 0))
  // Without a forecast a job still presses once its window is over.
  const chance = chance3Months ?? 0.1
  return (Math.min(1, Math.max(0, chance)) / QUARTER_DAYS) * excess
}
