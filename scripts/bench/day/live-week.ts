import type { Board } from '@almanac/dispatch/propose/board'
import type { JobKind } from '@almanac/records/job-kind'
import { logNormal } from './chance.ts'
import { driveOf, type Week } from './hand.ts'
import { believed, DAY_FROM, DAY_TO } from './invent-week.ts'

/** Nobody says how much a drive varies: a tenth and a half, of the logarithm. Ours, no source. */
const DRIVE_SPREAD = 0.15
/** Whoever works eats: half an hour between two visits, at the first chance from half past eleven. */
const EATS = { from: 690, minutes: 30 }

export type Lived = { days: number; late: number; lateMinutes: number; visits: number; missed: number }

/** One week as it comes: lengths and drives drawn about what the app believes, `times` as wide as it believes. Nobody begins before the time that was told. */
export function liveWeek(board: Board, kinds: ReadonlyMap<string, JobKind>, week: Week, chance: () => number, times: number): Lived {
  const drive = driveOf(board)
  const lived = { days: 0, late: 0, lateMinutes: 0, visits: 0, missed: 0 }
  for (const stops of week.values()) {
    if (stops.length === 0) continue
    let [at, place, hasEaten] = [DAY_FROM, 'yard', false]
    const go = (to: string) => {
      at += drive(place, to, at) * logNormal(chance, times * DRIVE_SPREAD)
      place = to
    }
    for (const stop of stops) {
      if (!hasEaten && at >= EATS.from) [at, hasEaten] = [at + EATS.minutes, true]
      go(stop.place)
      // Who would wait for it to begin anyway eats then.
      if (!hasEaten && at >= EATS.from - EATS.minutes && stop.start - at >= EATS.minutes) hasEaten = true
      at = Math.max(at, stop.start)
      lived.visits++
      if (at > stop.until) lived.missed++
      at += stop.minutes * logNormal(chance, times * believed(kinds.get(stop.jobId) ?? 'inspection').spread)
    }
    go('yard')
    lived.days++
    if (at > DAY_TO) lived.late++
    lived.lateMinutes += Math.max(0, at - DAY_TO)
  }
  return lived
}
