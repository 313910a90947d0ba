'use client'
import type { Desk } from '@almanac/contract/desk'
import { BeadCount } from '@almanac/ui/bead-count'
import { useDisplay } from '@almanac/ui/display'
import { HoursPlot } from '@almanac/ui/hours-plot'
import { ShelfLines } from '@almanac/ui/shelf-lines'
import { formatAmount } from '@almanac/units/amount-words'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { formatDay } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { useQuery } from '@tanstack/react-query'
import { useSession } from '@/client/providers'
import { useToday } from '@/client/use-today'
import type { DueFilters } from './use-due-filters.ts'

/** Things on the shelf that are shown; the stores list them all. */
const MOST_LINES = 4
const SHELF_DAYS = 120

type Props = { desk: Desk; filters: DueFilters; change: (part: Partial<DueFilters>) => void }

/** The work ahead at one look: beds failed unseen as beads, hours by month against the crews', and how long the shelf lasts. */
export function DeskPicture({ desk, filters, change }: Props) {
  const display = useDisplay()
  const unseen = Math.round(desk.unseen)
  return (
    <div className="mt-4 grid grid-cols-1 items-start gap-x-10 gap-y-4 lg:grid-cols-[auto_1fr]">
      {unseen > 0 ? (
        <BeadCount
          all={unseen}
          full={Math.min(unseen, desk.toCall - desk.answered)}
          words={`${showWhole(unseen, display)} failed already, unseen; ${showWhole(desk.toCall - desk.answered, display)} to call about`}
        />
      ) : null}
      <div className="min-w-0">
        <HoursPlot
          title="Hours of rebeds needed, by month"
          months={desk.months.map(({ month, rebeds, hours, bookedHours, crewHours }) => ({
            ...{ month, rebeds: rebeds.mean, needed: hours.mean, low: hours.low, high: hours.high },
            ...{ booked: bookedHours, capacity: crewHours },
          }))}
          selected={filters.month ?? null}
          onSelect={(month) => change({ month: month ?? undefined })}
        />
        <Shelf />
      </div>
    </div>
  )
}

function Shelf() {
  const display = useDisplay()
  const today = useToday()
  const { api, me } = useSession()
  const orders = useQuery(api.stores.orders.queryOptions())
  const lines = (orders.data?.lines ?? []).flatMap(({ stockItemId: key, name, unit, onHand, outOn, shortForBookedOn, orderBy }) => {
    const gone = shortForBookedOn ?? outOn
    if (!gone || !orderBy) return []
    const left = formatAmount(onHand, unit, me.company, 1)
    const words =
      orderBy <= today
        ? `${name}: ${left}, run short ${formatDay(gone, display)}; order now`
        : `${name}: ${left}, run short ${formatDay(gone, display)}; order by ${formatDay(orderBy, display)}`
    return [{ key, words, outOn: gone, orderBy }]
  })
  if (lines.length === 0) return null
  return (
    <section aria-label="On the shelf until" className="mt-3">
      <h3 className="mb-1 text-small text-soft">On the shelf until</h3>
      <ShelfLines lines={lines.slice(0, MOST_LINES)} today={today} until={addDays(today, SHELF_DAYS)} />
    </section>
  )
}
