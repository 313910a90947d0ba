'use client'
import type { OrderLine } from '@almanac/contract/stores'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { StatusWord } from '@almanac/ui/status-word'
import { formatAmount } from '@almanac/units/amount-words'
import { formatDay } from '@almanac/units/format-day'
import { showNumber } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'

/** What to order and by when: booked rebeds have spoken for their kits, and the forecast says what will follow. */
export function Orders() {
  const display = useDisplay()
  const { api, me } = useSession()
  const today = useToday()
  const orders = useQuery(api.stores.orders.queryOptions())
  if (orders.error) return <Problem happened={readFailure(orders.error).message} onRetry={() => void orders.refetch()} />
  if (!orders.data) return <Skeleton lines={4} label="Working out what will run short" />
  const { untilDay, lines } = orders.data
  const needed = lines.filter((line) => line.orderBy !== null)
  if (lines.length === 0) return <p className="text-soft">Once items are on the list below, what to order and by when stands here.</p>
  if (needed.length === 0)
    return <p className="text-soft">No shortages before {formatDay(untilDay, display)}, counting booked work and the forecast.</p>
  return (
    <>
      <p className="mb-3 max-w-[75ch] text-soft">
        Until {formatDay(untilDay, display)}: kits for the booked rebeds, plus the usual kit for each rebed the forecast expects.
      </p>
      <DataTable<OrderLine>
        caption="What to order"
        rows={needed}
        rowKey={(line) => line.stockItemId}
        columns={[
          { key: 'name', head: 'Item', phone: 'title', cell: (line) => <span className="font-semibold">{line.name}</span> },
          { key: 'hand', head: 'On hand', align: 'right', cell: (line) => formatAmount(line.onHand, line.unit, me.company, 1) },
          {
            key: 'reserved',
            head: 'Reserved',
            align: 'right',
            cell: (line) => (line.reserved > 0 ? showNumber(line.reserved, 1, me.company) : '–'),
          },
          {
            key: 'out',
            head: 'Runs short',
            cell: (line) =>
              line.shortForBookedOn ? (
                <StatusWord shape="triangle" tone="danger">
                  {formatDay(line.shortForBookedOn, display)}, for booked work
                </StatusWord>
              ) : (
                `about ${formatDay(line.outOn ?? untilDay, display)}`
              ),
          },
          {
            key: 'by',
            head: 'Order by',
            cell: (line) => {
              const late = line.orderBy !== null && line.orderBy <= today
              return <span className={late ? 'text-danger' : undefined}>{late ? 'now' : formatDay(line.orderBy ?? '', display)}</span>
            },
          },
          { key: 'order', head: 'Order', align: 'right', cell: (line) => formatAmount(line.order, line.unit, me.company, 1) },
          {
            key: 'lead',
            head: 'Lead time',
            align: 'right',
            cell: (line) => `${line.leadDays} days`,
          },
        ]}
      />
    </>
  )
}
