'use client'
import type { PlanTotals } from '@almanac/contract/plans'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { formatMiles } from '@almanac/units/distance'
import { formatDuration } from '@almanac/units/format-clock'
import { showNumber, showWhole } from '@almanac/units/format-number'
import { useSession } from '@/client/providers'

type Props = { before: PlanTotals; after: PlanTotals; caption?: string; heads?: [string, string] }

/** The sheets as they stand beside what the plan would make of them. */
export function PlanTotalsTable({
  before,
  after,
  caption = 'The day sheets now and with this plan',
  heads = ['Now', 'With the plan'],
}: Props) {
  const display = useDisplay()
  const { me } = useSession()
  const miles = (value: number) => formatMiles(value, me.company)
  const rows = [
    { name: 'Visits on the sheets', now: showWhole(before.planned, display), planned: showWhole(after.planned, display) },
    { name: 'Jobs waiting', now: showWhole(before.waiting, display), planned: showWhole(after.waiting, display) },
    { name: 'Driving', now: formatDuration(before.driveMinutes, display), planned: formatDuration(after.driveMinutes, display) },
    { name: 'Road', now: miles(before.miles), planned: miles(after.miles) },
    {
      name: 'Overtime of the crews',
      now: formatDuration(before.overtimeMinutes, display),
      planned: formatDuration(after.overtimeMinutes, display),
    },
    ...(before.lateEnds === null || after.lateEnds === null
      ? []
      : [
          {
            name: 'Days likely to end late',
            now: showNumber(before.lateEnds, 1, display) ?? '0',
            planned: showNumber(after.lateEnds, 1, display) ?? '0',
          },
        ]),
    { name: 'Days past a due window', now: showWhole(before.lateDays, display), planned: showWhole(after.lateDays, display) },
  ]
  return (
    <div className="max-w-2xl">
      <DataTable
        caption={caption}
        rows={rows}
        rowKey={(row) => row.name}
        columns={[
          { key: 'name', head: <span className="sr-only">What</span>, phone: 'title', cell: (row) => row.name },
          { key: 'now', head: heads[0], align: 'right', cell: (row) => row.now },
          {
            key: 'then',
            head: heads[1],
            align: 'right',
            cell: (row) => <span className={row.now === row.planned ? undefined : 'font-semibold'}>{row.planned}</span>,
          },
        ]}
      />
    </div>
  )
}
