'use client'
import type { DueMonths } from '@almanac/contract/due'
import type { DueGrouping } from '@almanac/records/forecast-run'
import { type RecordedResinKind, resinKindWords } from '@almanac/records/resin-kind'
import { useDisplay } from '@almanac/ui/display'
import { GroupSpans } from '@almanac/ui/group-spans'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { formatMonth } from '@almanac/units/format-day'
import { showFixed } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'

type Group = DueMonths['groups'][number]

const REST: Record<DueGrouping, string> = {
  supply: 'Small supplies or not known',
  area: 'Small towns, or no town on record',
  resin: 'Kinds with few beds',
}
const KIND: Record<DueGrouping, string> = { supply: 'supply', area: 'town', resin: 'kind of resin' }

const nameOf = (group: Group, by: DueGrouping) =>
  group.name === null ? REST[by] : by === 'resin' ? (resinKindWords[group.name as RecordedResinKind] ?? 'resin not known') : group.name

/** The beds of the firm told apart by supply, town or kind of resin; read when asked for. */
export function DueGroups({ by }: { by: DueGrouping }) {
  const { api } = useSession()
  const read = useQuery(api.due.months.queryOptions({ input: { by } }))
  if (read.error)
    return <Problem happened={readFailure(read.error).message} onRetry={() => void read.refetch()} retrying={read.isFetching} />
  if (!read.data) return <Skeleton lines={6} label="Loading the groups" />
  if (read.data.groups.length === 0)
    return <p className="my-4 text-soft">The groups are counted with the next forecast, tonight at the latest.</p>
  return <Groups picture={read.data} by={by} />
}

/** Twelve months as a picture; month by month and year by year in the table and the file. */
function Groups({ picture, by }: { picture: DueMonths; by: DueGrouping }) {
  const display = useDisplay()
  const { groups, years, months } = picture
  const table = {
    heads: [
      ...[KIND[by], 'beds', 'probably failed already', 'next 12 months', 'low', 'high'],
      ...years.slice(1).map((one) => `12 months from ${formatMonth(`${one.from}-01`, display)}`),
      ...months.slice(0, 12).map((one) => formatMonth(`${one.month}-01`, display)),
    ],
    rows: groups.map((group) => [
      ...[nameOf(group, by), String(group.beds), showFixed(group.failedAlready, 1, display)],
      ...[showFixed(group.years[0]?.mean ?? 0, 1, display), String(group.years[0]?.low ?? ''), String(group.years[0]?.high ?? '')],
      ...years.slice(1).map((_, i) => showFixed(group.years[i + 1]?.mean ?? 0, 1, display)),
      ...months.slice(0, 12).map((_, i) => showFixed(group.months[i]?.mean ?? 0, 1, display)),
    ]),
  }
  return (
    <GroupSpans
      title={`Beds expected to fail in 12 months, by ${KIND[by]}`}
      rows={groups.map((group) => ({ name: nameOf(group, by), beds: group.beds, ...(group.years[0] ?? { mean: 0, low: 0, high: 0 }) }))}
      table={table}
    />
  )
}
