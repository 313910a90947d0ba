'use client'
import type { OrderLine } from '@almanac/contract/stores'
import { DataTable } from '@almanac/ui/data-table'
import { useDisplay } from '@almanac/ui/display'
import { Problem } from '@almanac/ui/problem'
import { Skeleton } from '@almanac/ui/skeleton'
import { StatusWord } from '@almanac/ui/status-word'
import { formatDay } from '@almanac/units/format-day'
import { showNumber } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { useQuery } from '@tanstack/react-query'
import { readFailure } from '@/client/failure'
import { useSession } from '@/client/providers'
import { useStockAmount } from '@/client/use-stock-amount'
import { useToday } from '@/client/use-today'

/** What to order and by when: booked rebeds have spoken for their kits, and the forecast says what will follow. */
export function Orders() {
  const display = useDisplay()
  const words = useWords('stores')
  const amountText = useStockAmount()
  const { api, me } = useSession()
  const today = useToday()
  const orders = useQuery(api.stores.orders.queryOptions())
  if (orders.error) return <Problem happened={readFailure(orders.error).message} onRetry={() => void orders.refetch()} />
  if (!orders.data) return <Skeleton lines={4} label={words('working')} />
  const { untilDay, lines } = orders.data
  const needed = lines.filter((line) => line.orderBy !== null)
  if (lines.length === 0) return <p className="text-soft">{words('onceListed')}</p>
  if (needed.length === 0) return <p className="text-soft">{words('noShortage', { day: formatDay(untilDay, display) })}</p>
  return (
    <>
      <p className="mb-3 max-w-[75ch] text-soft">{words('until', { day: formatDay(untilDay, display) })}</p>
      <DataTable<OrderLine>
        caption={words('toOrder')}
        rows={needed}
        rowKey={(line) => line.stockItemId}
        columns={[
          { key: 'name', head: words('item'), phone: 'title', cell: (line) => <span className="font-semibold">{line.name}</span> },
          { key: 'hand', head: words('onHand'), align: 'right', cell: (line) => amountText(line.onHand, line.unit, 1) },
          {
            key: 'reserved',
            head: words('reserved'),
            align: 'right',
            cell: (line) => (line.reserved > 0 ? showNumber(line.reserved, 1, me.company) : '–'),
          },
          {
            key: 'out',
            head: words('runsShort'),
            cell: (line) =>
              line.shortForBookedOn ? (
                <StatusWord shape="triangle" tone="danger">
                  {words('forBooked', { day: formatDay(line.shortForBookedOn, display) })}
                </StatusWord>
              ) : (
                words('about', { day: formatDay(line.outOn ?? untilDay, display) })
              ),
          },
          {
            key: 'by',
            head: words('orderBy'),
            cell: (line) => {
              const late = line.orderBy !== null && line.orderBy <= today
              return (
                <span className={late ? 'text-danger' : undefined}>{late ? words('now') : formatDay(line.orderBy ?? '', display)}</span>
              )
            },
          },
          { key: 'order', head: words('order'), align: 'right', cell: (line) => amountText(line.order, line.unit, 1) },
          {
            key: 'lead',
            head: words('leadTime'),
            align: 'right',
            cell: (line) => words('days', { count: line.leadDays }),
          },
        ]}
      />
    </>
  )
}
