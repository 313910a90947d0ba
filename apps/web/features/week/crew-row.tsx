'use client'
import type { WeekOfTowns, WeekSheet } from '@almanac/contract/week'
import { useDisplay } from '@almanac/ui/display'
import type { Display } from '@almanac/units/display'
import { formatMinute } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import Link from 'next/link'
import type { CSSProperties } from 'react'
import { type Axis, atPercent, initials } from './week-words.ts'

const BASE = 26

function sheetWords({ visits }: WeekSheet, display: Display): string {
  const booked = visits.filter((visit) => !visit.held)
  const held = visits.length - booked.length
  const last = booked.at(-1)
  const words = last
    ? `${booked.length === 1 ? 'one visit' : `${booked.length} visits`}, the last ends ${formatMinute(last.until, display)}`
    : 'nothing booked'
  return held > 0 ? `${words}, ${held === 1 ? 'one time' : `${held} times`} held` : words
}

/** One crew's week: its visits on each day, promises as brackets over them. A day opens its sheet. */
export function CrewRow({ crew, data, axis, columns }: { crew: string; data: WeekOfTowns; axis: Axis; columns: CSSProperties }) {
  const display = useDisplay()
  const sheets = data.sheets.filter((sheet) => sheet.crewName === crew)
  const people = sheets[0]?.people.length ?? 0
  return (
    <li className="border-b border-line md:grid" style={columns}>
      <div className="py-2">
        <span className="font-semibold">{crew}</span>
        <span className="block text-small text-soft">
          {initials(crew)} · {people === 1 ? 'alone' : people === 2 ? 'two people' : `${people} people`}
        </span>
      </div>
      {data.days.map((day) => {
        const sheet = sheets.find((one) => one.day === day)
        if (!sheet)
          return (
            <span key={day} className="hidden border-l border-edge py-2 pl-2 text-small text-soft md:block">
              no sheet
            </span>
          )
        return (
          <Link
            key={day}
            href={`/day-sheets?day=${day}&sheet=${sheet.crewDayId}`}
            className="block py-1 text-small text-soft hover:bg-wash hover:text-ink md:border-l md:border-edge"
          >
            <span className="md:sr-only">{formatNearDay(day, display)}: </span>
            <svg aria-hidden="true" width="100%" height={BASE + 6} className="hidden md:block">
              <line
                x1={`${atPercent(sheet.hours.from, axis)}%`}
                x2={`${atPercent(sheet.hours.until, axis)}%`}
                y1={BASE}
                y2={BASE}
                className="stroke-edge"
              />
              {sheet.visits.map((visit) => (
                <g key={`${visit.from} ${visit.until}`}>
                  <line
                    x1={`${atPercent(visit.from, axis)}%`}
                    x2={`${atPercent(visit.until, axis)}%`}
                    y1={BASE - 4}
                    y2={BASE - 4}
                    className={visit.held ? 'stroke-water' : 'stroke-ink'}
                    strokeDasharray={visit.held ? '3 3' : undefined}
                    strokeWidth="6"
                  />
                  {visit.promised ? <Bracket span={visit.promised} axis={axis} /> : null}
                </g>
              ))}
            </svg>
            <span className="md:pl-2">{sheetWords(sheet, display)}</span>
          </Link>
        )
      })}
    </li>
  )
}

function Bracket({ span, axis }: { span: { from: number; until: number }; axis: Axis }) {
  const [x1, x2] = [`${atPercent(span.from, axis)}%`, `${atPercent(span.until, axis)}%`]
  return (
    <g className="stroke-water" strokeWidth="2">
      <line x1={x1} x2={x2} y1="8" y2="8" />
      <line x1={x1} x2={x1} y1="8" y2="14" />
      <line x1={x2} x2={x2} y1="8" y2="14" />
    </g>
  )
}
