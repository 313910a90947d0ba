import { DAYS_PER_YEAR, type IsoDay, parseDay } from '@almanac/units/calendar/day-number'
import { ok, type Result, refuse } from '@almanac/units/result'
import type { BedRecord } from '../fit/bed-record.ts'
import { seeded } from '../numeric/seeded.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import { type Backtest, backtest, type Method } from './rolling-origin.ts'

export interface FirmBacktestOptions {
  /** Days to stand on; by default past new year's days with failures on both sides. */
  readonly origins?: readonly IsoDay[]
  /** Most beds forecast on each day; more are sampled. */
  readonly mostBedsPerOrigin?: number
}

export interface FirmBacktest extends Backtest {
  readonly originDays: readonly IsoDay[]
  /** By how many per cent the forecast's integrated Brier score lies below each rule's; negative where the rule did better. */
  readonly skill: readonly { readonly method: Method; readonly percent: number }[]
  /** Outcomes by where they fell in the forecast, in 20 equal bars: level when the forecast is honest. */
  readonly bins: readonly number[]
  /** What a page must say with the figures, in sentences. */
  readonly notes: readonly string[]
}

/** Years looked back on at most, and the failures there must be before each day to have learned from and after it to be held against. */
const YEARS_BACK = 8
const FAILURES = 5

/** Sampling this many beds a day leaves a Brier score's error below a hundredth of itself. */
const MOST_BEDS = 3000

/** A firm so large is stood on fewer days: each takes a fit of all its records. */
const LARGE = 10_000
const YEARS_BACK_LARGE = 4

const BARS = 20

/**
 * Holds the forecast against the firm's own past, by figures a page can show: never using on a day what was learned later. Same records, day and seed, same answer.
 * Seconds for 3,000 beds, less than two minutes for 50,000. Refuses with a sentence where there are too few failures to look back on.
 */
export function backtestFirm(
  records: readonly BedRecord[],
  prior: ForecastParameters,
  asOfDay: IsoDay,
  seed: number,
  options: FirmBacktestOptions = {},
): Result<FirmBacktest> {
  const originDays = options.origins ?? originsOf(records, asOfDay)
  if (originDays.length === 0)
    return refuse('Too few beds have failed on record to look back: we need five before a January 1 and five after it.')
  const mostBeds = options.mostBedsPerOrigin ?? MOST_BEDS
  const result = backtest(records, prior, originDays, seeded(seed), { mostBeds, asOfDay })
  if (!result.ok) return result
  const { value } = result
  const own = value.scores.find(({ method }) => method === 'forecast')?.integratedBrier ?? Number.NaN
  const bins = new Array<number>(BARS).fill(0)
  for (const place of value.places) {
    const bar = Math.min(BARS - 1, Math.floor(place * BARS))
    bins[bar] = (bins[bar] ?? 0) + 1
  }
  return ok({
    ...value,
    originDays,
    skill: value.scores
      .filter(({ method }) => method !== 'forecast')
      .map(({ method, integratedBrier }) => ({ method, percent: 100 * (1 - own / integratedBrier) })),
    bins,
    notes: notesOf(value, originDays, records.length, mostBeds),
  })
}

/** New year's days at least a year ago with enough failures on both sides, oldest first. */
function originsOf(records: readonly BedRecord[], asOfDay: IsoDay): IsoDay[] {
  const asOf = parseDay(asOfDay)
  if (asOf === null) return []
  const failures = records.flatMap(({ end }) => (end?.cause === 'failed' || end?.cause === 'unknown' ? [end.latestDay] : [])).sort()
  const lastYear = Number(asOfDay.slice(0, 4)) - 1
  const back = records.length > LARGE ? YEARS_BACK_LARGE : YEARS_BACK
  return Array.from({ length: back }, (_, i) => `${lastYear - back + 1 + i}-01-01`).filter((day) => {
    if ((asOf - (parseDay(day) ?? asOf)) / DAYS_PER_YEAR < 0.99) return false
    const before = failures.filter((one) => one < day).length
    return before >= FAILURES && failures.length - before >= FAILURES
  })
}

function notesOf(value: Backtest, originDays: readonly IsoDay[], records: number, mostBeds: number): string[] {
  const notes: string[] = []
  if (value.counts.some(({ beds }) => beds >= mostBeds))
    notes.push(`On each date, at most ${mostBeds} of the beds in service were forecast, picked at random.`)
  if (originDays.length < 3) notes.push('The records cover only a few years, so one odd year counts for a lot here.')
  if (records < 100) notes.push('With fewer than a hundred beds these figures are mostly chance.')
  return notes
}
