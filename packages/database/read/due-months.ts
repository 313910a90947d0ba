import type { DueMonths } from '@almanac/contract/due'
import type { DueGrouping } from '@almanac/records/forecast-run'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { instantIn } from '@almanac/units/calendar/zone-clock'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { readShownFit } from './shown-fit.ts'

type Band = { mean: number; low: number; high: number }
type Figures = [number, number, number][]
type Picture = { run: { asOfDay: Date; startedAt: Date }; beds: number; months: Band[]; years: Band[] }

const bandOf = ([mean, low, high]: [number, number, number]): Band => ({ mean, low, high })
const monthLater = (from: string, later: number) => {
  const index = Number(from.slice(0, 4)) * 12 + Number(from.slice(5, 7)) - 1 + later
  return `${Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, '0')}`
}
const RUN = { run: { select: { asOfDay: true, startedAt: true } } }

/** The stored sum of the company, or of one supply; null before the first forecast, and of a supply with too few beds. */
async function readPicture(tx: Tx, companyId: string, waterSupplyId: string | undefined): Promise<Picture | null> {
  if (waterSupplyId) {
    const group = await tx.forecastGroup.findFirst({ where: { companyId, by: 'supply', key: waterSupplyId }, include: RUN })
    return group && { ...group, months: (group.months as Figures).map(bandOf), years: (group.years as Figures).map(bandOf) }
  }
  const rows = await tx.forecastMonth.findMany({ where: { companyId, waterSupplyId: null }, orderBy: { month: 'asc' }, include: RUN })
  const [first] = rows
  if (!first) return null
  const of = (months: number) => rows.filter((row) => row.months === months).map(({ mean, low, high }) => ({ mean, low, high }))
  return { run: first.run, beds: first.beds, months: of(1), years: of(12) }
}

/** Rebeds booked by month. */
async function readBooked(tx: Tx, companyId: string, waterSupplyId: string | undefined, from: string, count: number, timeZone: string) {
  const until = addDays(`${monthLater(from, count - 1)}-01`, 31)
  const visits = await tx.$queryRaw<{ month: string; count: number }[]>`
    select to_char(v.starts_at at time zone ${timeZone}, 'YYYY-MM') as month, count(*)::int as count
    from visit v join job j on j.company_id = v.company_id and j.id = v.job_id join site s on s.company_id = j.company_id and s.id = j.site_id
    where v.company_id = ${companyId}::uuid and v.state in ('booked', 'under-way') and j.kind = any(${[...bedRenewingKinds]})
      and v.starts_at >= ${instantIn(timeZone, `${from}-01`, 0)} and v.starts_at < ${instantIn(timeZone, until, 0)}
      and (${waterSupplyId ?? null}::uuid is null or s.water_supply_id = ${waterSupplyId ?? null}::uuid)
    group by 1`
  return new Map(visits.map((visit) => [visit.month, visit.count]))
}

/** The groups of one kind, largest first, with the names of supplies. */
async function readGroups(tx: Tx, companyId: string, by: DueGrouping): Promise<DueMonths['groups']> {
  const rows = await tx.forecastGroup.findMany({
    where: { companyId, by },
    orderBy: [{ beds: 'desc' }, { key: { sort: 'asc', nulls: 'last' } }],
  })
  const supplies =
    by === 'supply'
      ? await tx.waterSupply.findMany({
          where: { companyId, id: { in: rows.flatMap((row) => row.key ?? []) } },
          select: { id: true, name: true },
        })
      : []
  const nameOf = new Map(supplies.map((one) => [one.id, one.name]))
  return rows.map(({ key, beds, failedAlready, months, years }) => ({
    key,
    name: key === null ? null : (nameOf.get(key) ?? key),
    beds,
    failedAlready,
    months: (months as Figures).map(bandOf),
    years: (years as Figures).map(bandOf),
  }))
}

/** The month picture of the company, or of one supply, with what is booked beside it; by group where asked. */
export async function readDueMonths(
  scope: Pick<Scope, 'companyId'>,
  { waterSupplyId, by }: { waterSupplyId?: string; by?: DueGrouping },
  timeZone: string,
): Promise<Omit<DueMonths, 'widenedBy'>> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const picture = await readPicture(tx, companyId, waterSupplyId)
    const asOfDay = picture ? dayOf(picture.run.asOfDay) : null
    const from = asOfDay?.slice(0, 7) ?? ''
    const months = picture?.months ?? []
    const booked =
      months.length > 0 ? await readBooked(tx, companyId, waterSupplyId, from, months.length, timeZone) : new Map<string, number>()
    const supplies = await readGroups(tx, companyId, 'supply')
    return {
      asOfDay,
      computedAt: picture ? picture.run.startedAt.toISOString() : null,
      beds: picture?.beds ?? 0,
      year: picture?.years[0] ?? null,
      years: (picture?.years ?? []).map((band, i) => ({ ...band, from: monthLater(from, i * 12) })),
      months: months.map((band, i) => ({ ...band, month: monthLater(from, i), booked: booked.get(monthLater(from, i)) ?? 0 })),
      failedAlready: supplies
        .filter(({ key }) => waterSupplyId === undefined || key === waterSupplyId)
        .reduce((sum, group) => sum + group.failedAlready, 0),
      fit: await readShownFit(tx, companyId),
      supplies: supplies.flatMap(({ key, name, beds }) => (key === null ? [] : [{ id: key, name: name ?? '', beds }])),
      groups: by === undefined ? [] : by === 'supply' ? supplies : await readGroups(tx, companyId, by),
    }
  })
}
