import type { DueMonths } from '@almanac/contract/due'
import { addDays, instantIn } from '@almanac/runtime/clock'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { readShownFit } from './shown-fit.ts'

/** The month picture of the company, or of one supply: a stored sum, with what is booked beside it. */
export async function readDueMonths(
  scope: Pick<Scope, 'companyId'>,
  waterSupplyId: string | undefined,
  timeZone: string,
): Promise<DueMonths> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const settings = await tx.companySettings.findFirst({ where: { companyId }, select: { rebedsPerMonth: true } })
    const rows = await tx.forecastMonth.findMany({
      where: { companyId, waterSupplyId: waterSupplyId ?? null },
      orderBy: { month: 'asc' },
      include: { run: { select: { asOfDay: true, startedAt: true } } },
    })
    const months = rows.filter((row) => row.months === 1)
    const years = rows.filter((row) => row.months === 12)
    const [year] = years
    const booked = new Map<string, number>()
    const first = months[0]
    const last = months.at(-1)
    if (first && last) {
      const visits = await tx.$queryRaw<{ month: string; count: number }[]>`
        select to_char(v.starts_at at time zone ${timeZone}, 'YYYY-MM') as month, count(*)::int as count
        from visit v join job j on j.company_id = v.company_id and j.id = v.job_id join site s on s.company_id = j.company_id and s.id = j.site_id
        where v.company_id = ${companyId}::uuid and v.state in ('booked', 'under-way') and j.kind = 'rebed'
          and v.starts_at >= ${instantIn(timeZone, dayOf(first.month), 0)} and v.starts_at < ${instantIn(timeZone, addDays(dayOf(last.month), 31), 0)}
          and (${waterSupplyId ?? null}::uuid is null or s.water_supply_id = ${waterSupplyId ?? null}::uuid)
        group by 1`
      for (const { month, count } of visits) booked.set(month, count)
    }
    const probablyFailed = await tx.bedForecast.count({
      where: { companyId, chanceAlreadyFailed: { gt: 0.5 }, ...(waterSupplyId ? { waterSupplyId } : {}) },
    })
    const supplies = await tx.$queryRaw<DueMonths['supplies']>`
      select w.id, w.name, m.beds from forecast_month m join water_supply w on w.company_id = m.company_id and w.id = m.water_supply_id
      where m.company_id = ${companyId}::uuid and m.months = 12 and m.month = ${first?.month ?? null}::date order by m.beds desc`
    const band = ({ mean, low, high }: { mean: number; low: number; high: number }) => ({ mean, low, high })
    return {
      asOfDay: first ? dayOf(first.run.asOfDay) : null,
      computedAt: first ? first.run.startedAt.toISOString() : null,
      beds: first?.beds ?? 0,
      year: year ? band(year) : null,
      years: years.map((row) => ({ ...band(row), from: dayOf(row.month).slice(0, 7) })),
      months: months.map((row) => {
        const month = dayOf(row.month).slice(0, 7)
        return { ...band(row), month, booked: booked.get(month) ?? 0 }
      }),
      rebedsPerMonth: settings?.rebedsPerMonth ?? 0,
      probablyFailed,
      fit: await readShownFit(tx, companyId),
      supplies,
    }
  })
}
