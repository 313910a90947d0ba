import type { BacktestResult } from '@almanac/contract/forecasts'
import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { inCompany } from '@almanac/database/in-company'
import { commandTools } from '@almanac/database/run-command'
import type { FirmBacktest } from '@almanac/forecast/backtest/backtest-firm'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { now } from '@almanac/runtime/clock'
import { newId } from '@almanac/runtime/ids'
import type { TaskPayloads } from '@almanac/runtime/queues'
import { runInWorkerThread } from '@almanac/runtime/run-in-worker-thread'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import type { Result } from '@almanac/units/result'
import type { BacktestInput } from './backtest-aside.ts'
import { type CompanyRecords, readCompanyRecords } from './company-records.ts'

/** A picture of past forecasts changes slowly: it is made anew once a week. */
const DAYS_BETWEEN = 7
/** A fit for each day stood on: minutes for the largest firms; the queue gives a task fifteen. */
const ASIDE = { module: '@almanac/operations/forecasts/backtest-aside', seconds: 840, memoryMb: 4096 }

function asStored({ worst, ...found }: FirmBacktest, { bedIds }: CompanyRecords): BacktestResult {
  const { originDays: _days, places: _places, ...figures } = found
  return { ...figures, worst: worst.map(({ record, ...miss }) => ({ ...miss, bedId: bedIds[record] ?? '' })) }
}

/** Whether the last look back is old enough for another; true where there was none. */
export async function backtestDue(tx: Tx, companyId: string): Promise<boolean> {
  const since = new Date(now().getTime() - DAYS_BETWEEN * 86_400_000)
  return (await tx.forecastBacktest.count({ where: { companyId, finishedAt: { gt: since } } })) === 0
}

/**
 * Stands on past new year's days with what the firm knew then, fits, forecasts, and holds it against what came; stored with the days and the records' hash. Starts from
 * the trade's first guesses even where the firm pools: other firms' fits of today know what came later. The arithmetic runs in a process of its own. Written in one
 * piece at its end.
 */
export async function backtestCompany({ companyId }: TaskPayloads['backtest-company']): Promise<void> {
  const startedAt = now()
  const today = await inCompany({ companyId }, async (tx) => {
    const { timeZone } = await tx.company.findUniqueOrThrow({ where: { id: companyId }, select: { timeZone: true } })
    return dayIn(timeZone, now())
  })
  const data = await readCompanyRecords(companyId)
  const seed = Number.parseInt(data.dataHash.slice(0, 8), 16)
  const input: BacktestInput = { records: data.records, prior: tradePriors(), asOfDay: today, seed }
  const found = await runInWorkerThread<Result<FirmBacktest>>({ ...ASIDE, companyId }, input)
  await inCompany({ companyId }, async (tx) => {
    await tx.forecastBacktest.create({
      data: {
        companyId,
        id: newId(),
        asOfDay: dateOf(today),
        startedAt,
        finishedAt: now(),
        dataHash: data.dataHash,
        origins: found.ok ? [...found.value.originDays] : [],
        ...(found.ok ? { result: asStored(found.value, data) } : { refusal: found.reason }),
      },
    })
    await commandTools(tx, { companyId, personId: null }, 'forecasts.backtest', null).announce('forecast-backtest', companyId)
  })
}
