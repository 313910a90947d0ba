import { type Backtest, backtest } from '@almanac/forecast/backtest/rolling-origin'
import type { BedRecord } from '@almanac/forecast/fit/bed-record'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import type { Result } from '@almanac/units/result'

export type BacktestInput = { records: BedRecord[]; prior: ForecastParameters; origins: string[]; seed: number }

/** A number in [0, 1) from a seed: mulberry32 by T. Ettinger, public domain. The same records give the same picture. */
function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

/** The backtest as a thread of its own calls it: a fit for each day stood on. */
export function backtestAside({ records, prior, origins, seed }: BacktestInput): Result<Backtest> {
  return backtest(records, prior, origins, seeded(seed))
}
