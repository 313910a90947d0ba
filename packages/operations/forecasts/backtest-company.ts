import type { BacktestResult } from '@almanac/contract/forecasts'
import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import type { Backtest } from '@almanac/forecast/backtest/rolling-origin'
import type { BedRecord } from '@almanac/forecast/fit/bed-record'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { addDays, dayIn, now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { runAside } from '@almanac/runtime/run-aside'
import type { Result } from '@almanac/units/result'
import type { BacktestInput } from './backtest-aside.ts'
import { type CompanyRecords, readCompanyRecords } from './company-records.ts'

/** Years looked back on at most, and the failures there must be before each to have learned from and after it to be held against. */
const YEARS_BACK = 8
const FAILURES = 5

/** A picture of past forecasts changes slowly: it is made anew once a week. */
const DAYS_BETWEEN = 7

/** Bars of the calibration picture. */
const BINS = 20

/** The new year's days to stand on: at least a year ago, with failures on both sides. */
export function originDays(records: readonly BedRecord[], today: string): string[] {
  const failures = records.flatMap((record) => (record.end?.cause === 'failed' ? [record.end.latestDay] : []))
  const year = Number(addDays(today, -365).slice(0, 4))
  return Array.from({ length: YEARS_BACK }, (_, i) => `${year - YEARS_BACK + 1 + i}-01-01`).filter((day) => {
    const before = failures.filter((one) => one < day).length
    return before >= FAILURES && failures.length - before >= FAILURES
  })
}

function asStored({ scores, places, coverage80, worst, bedsScored }: Backtest, { bedIds }: CompanyRecords): BacktestResult {
  const bins = new Array<number>(BINS).fill(0)
  for (const place of places) {
    const bin = Math.min(BINS - 1, Math.floor(place * BINS))
    bins[bin] = (bins[bin] ?? 0) + 1
  }
  return {
    scores: [...scores],
    bins,
    coverage80,
    bedsScored,
    worst: worst.map(({ record, ...miss }) => ({ ...miss, bedId: bedIds[record] ?? '' })),
  }
}

/** Whether the last look back is old enough for another; true where there was none. */
export async function backtestDue(tx: Tx, companyId: string): Promise<boolean> {
  const since = new Date(now().getTime() - DAYS_BETWEEN * 86_400_000)
  return (await tx.forecastBacktest.count({ where: { companyId, finishedAt: { gt: since } } })) === 0
}

/**
 * Stands on past new year's days with what the firm knew then, fits, forecasts, and holds it against what came; stored with the days and the records' hash. The
 * arithmetic runs in a thread of its own. Written in one piece at its end.
 */
export async function backtestCompany({ companyId }: TaskPayloads['backtest-company']): Promise<void> {
  const startedAt = now()
  const today = await inCompany({ companyId }, async (tx) => {
    const { timeZone } = await tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { timeZone: true } })
    return dayIn(timeZone)
  })
  const data = await readCompanyRecords(companyId)
  const origins = originDays(data.records, today)
  const input: BacktestInput = {
    records: data.records,
    prior: tradePriors(),
    origins,
    seed: Number.parseInt(data.dataHash.slice(0, 8), 16),
  }
  const found: Result<Backtest> =
    origins.length === 0
      ? { ok: false, reason: 'Too few beds have failed on record to look back: it takes five before a new year’s day and five after it.' }
      : await runAside(new URL('./backtest-aside.ts', import.meta.url).href, 'backtestAside', input)
  await inCompany({ companyId }, async (tx) => {
    await tx.forecastBacktest.create({
      data: {
        companyId,
        id: newId(),
        asOfDay: dateOf(today),
        startedAt,
        finishedAt: now(),
        dataHash: data.dataHash,
        origins,
        ...(found.ok ? { result: asStored(found.value, data) } : { refusal: found.reason }),
      },
    })
    await commandTools(tx, { companyId, personId: null }, 'forecasts.backtest', null).announce('forecast-backtest', companyId)
  })
}
