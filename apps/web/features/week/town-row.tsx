'use client'
import type { WeekOfTowns, WeekTown } from '@almanac/contract/week'
import { useDisplay } from '@almanac/ui/display'
import { formatDuration, formatMinute } from '@almanac/units/format-clock'
import Link from 'next/link'
import type { CSSProperties } from 'react'
import { type Axis, atPercent, byDriving, initials, townWords } from './week-words.ts'

const LINE = 24
const MOST_BEADS = 9

type Props = { town: WeekTown; data: WeekOfTowns; axis: Axis; columns: CSSProperties; address: (town: string) => string }

/** One town's week: the beads that wait or are due, when crews are there, and the free stretches of crews that are near. */
export function TownRow({ town, data, axis, columns, address }: Props) {
  const display = useDisplay()
  const chosen = town.town === data.town
  // All of the town asked about; of the others the one with least driving, so that the page stays calm.
  const placesOn = (day: string) => {
    const places = town.places.filter((place) => place.day === day)
    return chosen ? places : byDriving(places).slice(0, 1)
  }
  const most = Math.max(1, ...data.days.map((day) => placesOn(day).length))
  const height = most * LINE + 20
  return (
    <li className={`border-b border-line md:grid ${chosen ? 'bg-sheet outline outline-1 outline-edge' : ''}`} style={columns}>
      <div className={`py-2 pr-2 ${chosen ? 'pl-2' : ''}`}>
        <div className="flex items-baseline justify-between gap-2">
          <Link
            href={address(town.town)}
            scroll={false}
            replace
            aria-current={chosen ? 'true' : undefined}
            className="font-semibold underline decoration-edge decoration-1 underline-offset-4 hover:decoration-ink hover:decoration-2"
          >
            {town.town}
          </Link>
          <span aria-hidden="true" className="text-small whitespace-nowrap text-soft">
            {town.driveMinutes === null ? 'not on the map' : formatDuration(town.driveMinutes, display)}
          </span>
        </div>
        <Beads waiting={town.waiting} due={town.due} />
        <span className="text-small text-soft md:sr-only">{townWords(town, display)}</span>
      </div>
      {data.days.map((day) => (
        <div key={day} aria-hidden="true" className="hidden border-l border-edge md:block">
          <svg aria-hidden="true" width="100%" height={height} className="block text-small">
            <line x1="50%" x2="50%" y1="0" y2="100%" className="stroke-line" strokeDasharray="2 3" />
            {town.visits
              .filter((visit) => visit.day === day)
              .map((visit) => (
                <line
                  key={`${visit.from} ${visit.until}`}
                  x1={`${atPercent(visit.from, axis)}%`}
                  x2={`${atPercent(visit.until, axis)}%`}
                  y1={height - 8}
                  y2={height - 8}
                  className={visit.held ? 'stroke-water' : 'stroke-ink'}
                  strokeDasharray={visit.held ? '3 3' : undefined}
                  strokeWidth="3"
                />
              ))}
            {placesOn(day).map((place, n) => {
              const [x1, x2] = [`${atPercent(place.from, axis)}%`, `${atPercent(place.lastStart + data.minutes, axis)}%`]
              const y = LINE * (n + 1) - 2
              const late = atPercent(place.from, axis) > 55
              return (
                <g key={`${place.crewDayId} ${place.from}`} className="stroke-water">
                  <line x1={x1} x2={x2} y1={y} y2={y} strokeWidth="2" />
                  <line x1={x1} x2={x1} y1={y} y2={y + 6} strokeWidth="2" />
                  <line x1={x2} x2={x2} y1={y} y2={y + 6} strokeWidth="2" />
                  <text
                    x={late ? x2 : x1}
                    y={y - 5}
                    textAnchor={late ? 'end' : 'start'}
                    className={`fill-water stroke-none ${chosen ? 'font-semibold' : ''}`}
                  >
                    {initials(place.crewName)}
                    {chosen ? ` ${formatMinute(place.from, display)}, +${place.addedDriveMinutes}` : ` +${place.addedDriveMinutes}`}
                  </text>
                </g>
              )
            })}
          </svg>
        </div>
      ))}
    </li>
  )
}

/** Filled beads wait, hollow ones are due and have no job yet; beyond what a row holds, a number. */
function Beads({ waiting, due }: { waiting: number; due: number }) {
  const filled = Math.min(waiting, MOST_BEADS)
  const hollow = Math.min(due, MOST_BEADS - filled)
  const left = waiting + due - filled - hollow
  if (waiting + due === 0) return null
  return (
    <span aria-hidden="true" className="mt-0.5 flex items-center gap-1 text-small text-bead-ink">
      <svg aria-hidden="true" width={(filled + hollow) * 12} height="12">
        {Array.from({ length: filled + hollow }, (_, n) => `bead ${n}`).map((key, n) => (
          <circle
            key={key}
            cx={n * 12 + 6}
            cy="6"
            r={n < filled ? 4.5 : 4}
            className={n < filled ? 'fill-bead' : 'fill-none stroke-bead'}
            strokeWidth="1.5"
          />
        ))}
      </svg>
      {left > 0 ? `+${left}` : null}
    </span>
  )
}
