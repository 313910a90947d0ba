'use client'
import type { WeekOfTowns } from '@almanac/contract/week'
import { useDisplay } from '@almanac/ui/display'
import { LegendItem } from '@almanac/ui/plot-frame'
import { formatMinute } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import { CrewRow } from './crew-row.tsx'
import { TownRow } from './town-row.tsx'
import { type Axis, atPercent } from './week-words.ts'

const HOUR = 60
/** Usual working hours, where no sheet says otherwise. */
const USUAL = { from: 8 * HOUR, until: 17 * HOUR }

/** The hours that every day of the picture has: from the first crew's beginning to the last one's end. */
function axisOf({ sheets }: WeekOfTowns): Axis {
  if (sheets.length === 0) return USUAL
  const from = Math.min(...sheets.flatMap(({ hours, visits }) => [hours.from, ...visits.map((one) => one.from)]))
  const until = Math.max(...sheets.flatMap(({ hours, visits }) => [hours.until, ...visits.map((one) => one.until)]))
  return { from: Math.floor(from / HOUR) * HOUR, until: Math.ceil(until / HOUR) * HOUR }
}

/** Rows are towns in the order of the road from the yard, then the crews; columns are days, each with the same hours. Read and chosen, not dragged. */
export function WeekPicture({ data, address }: { data: WeekOfTowns; address: (town: string) => string }) {
  const display = useDisplay()
  const axis = axisOf(data)
  const hours = Array.from({ length: Math.floor((axis.until - axis.from) / HOUR) + 1 }, (_, n) => axis.from + n * HOUR).filter(
    (minute) => minute % (3 * HOUR) === 0 && minute > axis.from && minute < axis.until,
  )
  const crews = [...new Set(data.sheets.map((sheet) => sheet.crewName))].sort((a, b) => a.localeCompare(b))
  const columns = { gridTemplateColumns: `minmax(9rem, 13rem) repeat(${data.days.length}, minmax(0, 1fr))` }
  return (
    <figure className="min-w-0">
      <figcaption className="sr-only">The week, town by town and crew by crew</figcaption>
      <div className="mb-2 hidden flex-wrap gap-x-5 gap-y-1 text-small text-soft md:flex">
        <LegendItem sign={<circle cx="11" cy="6" r="4.5" className="fill-bead" />}>waiting</LegendItem>
        <LegendItem sign={<circle cx="11" cy="6" r="4" className="fill-none stroke-bead" strokeWidth="1.5" />}>
          due soon, no job yet
        </LegendItem>
        <LegendItem sign={<path d="M1 11 V4 H21 V11" className="fill-none stroke-water" strokeWidth="2" />}>
          a crew near and free
        </LegendItem>
        <LegendItem sign={<path d="M1 6 H21" className="stroke-ink" strokeWidth="3" />}>we are there</LegendItem>
        <LegendItem sign={<path d="M1 6 H21" className="stroke-water" strokeWidth="3" strokeDasharray="3 3" />}>
          held for a customer
        </LegendItem>
      </div>
      <div aria-hidden="true" className="hidden border-b border-ink md:grid" style={columns}>
        <span className="self-end pb-1 text-small text-soft">from the yard</span>
        {data.days.map((day) => (
          <span key={day} className="border-l border-edge pl-2">
            <span className={day === data.today ? 'font-semibold underline decoration-2 underline-offset-4' : 'font-semibold'}>
              {formatNearDay(day, display)}
            </span>
            <svg aria-hidden="true" width="100%" height="20" className="block overflow-visible text-small">
              {hours.map((minute) => (
                <text key={minute} x={`${atPercent(minute, axis)}%`} y="15" textAnchor="middle" className="fill-soft">
                  {formatMinute(minute, display).replace(':00', '')}
                </text>
              ))}
            </svg>
          </span>
        ))}
      </div>
      <ul>
        {data.towns.map((town) => (
          <TownRow key={town.town} {...{ town, data, axis, columns, address }} />
        ))}
      </ul>
      {crews.length > 0 ? <h2 className="mt-6 mb-1 font-semibold">Crews</h2> : null}
      <ul className="border-t border-ink">
        {crews.map((crew) => (
          <CrewRow key={crew} {...{ crew, data, axis, columns }} />
        ))}
      </ul>
    </figure>
  )
}
