import { backtestFirm, type FirmBacktest } from '@almanac/forecast/backtest/backtest-firm'
import type { BedRecord } from '@almanac/forecast/fit/bed-record'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { answerAside } from '@almanac/runtime/answer-aside'
import type { Result } from '@almanac/units/result'

export type BacktestInput = { records: BedRecord[]; prior: ForecastParameters; asOfDay: string; seed: number }

/** The backtest as a process of its own calls it: a fit for each day stood on. */
function backtestAside({ records, prior, asOfDay, seed }: BacktestInput): Result<FirmBacktest> {
  return backtestFirm(records, prior, asOfDay, seed)
}

answerAside(backtestAside)
