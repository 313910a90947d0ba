'use client'
import { showFixed, showNumber } from '@almanac/units/format-number'
import { useDisplay } from './display.tsx'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import type { PlotTable } from './plot-table.ts'
import { SpanAxis } from './span-axis.tsx'
import { useWidth } from './use-width.ts'

/** One group: how many beds it has and what is expected of them, with the likely range. */
export type GroupRow = { name: string; beds: number; mean: number; low: number; high: number }

export type GroupSpansProps = {
  title: string
  /** Largest first; the picture shows the first dozen, the table all. */
  rows: readonly GroupRow[]
  table: PlotTable
}

const SHOWN = 12
const ROW = 46
const TOP = 4
const AXIS = 24

/** What is expected of each group: a bar for the band, a stroke for the mean. The same figures, and the rest, stand in its table. */
export function GroupSpans({ title, rows, table }: GroupSpansProps) {
  const display = useDisplay()
  const [ref, width] = useWidth<HTMLDivElement>(560)
  const shown = rows.slice(0, SHOWN)
  const most = Math.max(...shown.map((row) => row.high), 1)
  const x = (count: number) => 2 + ((width - 26) * count) / (most * 1.05)
  const height = TOP + shown.length * ROW + AXIS
  const legend = (
    <>
      <LegendItem sign={<rect x="1" y="3" width="20" height="6" className="fill-water" opacity=".3" />}>four outcomes in five</LegendItem>
      <LegendItem sign={<path d="M11 0 V12" className="stroke-water" strokeWidth="3" />}>expected</LegendItem>
      {rows.length > SHOWN ? (
        <span>
          the {SHOWN} largest; the other {rows.length - SHOWN} are in the table
        </span>
      ) : null}
    </>
  )
  // Names are of any length; the table has them whole.
  const letters = Math.max(12, Math.floor(width / 7.6) - 17)
  const short = (name: string) => (name.length > letters ? `${name.slice(0, letters - 1).trimEnd()}…` : name)
  return (
    <PlotFrame title={title} showTitle legend={legend} table={table}>
      <div ref={ref}>
        <svg
          role="img"
          aria-label={`${title}: ${shown.map((row) => `${row.name} ${showFixed(row.mean, 1, display)}`).join('; ')}`}
          width={width}
          height={height}
          className="block max-w-full"
        >
          <SpanAxis {...{ most, width, height, x }} top={TOP} foot={AXIS} label={(tick) => showNumber(tick, 1, display) ?? ''} />
          {shown.map((row, i) => (
            <g key={row.name}>
              <text x={x(0)} y={TOP + i * ROW + 16} className="fill-ink">
                {short(row.name)}
                <tspan className="fill-soft">{`  ${showFixed(row.mean, 1, display)} of ${row.beds} beds`}</tspan>
              </text>
              <rect
                x={x(row.low)}
                y={TOP + i * ROW + 22}
                width={Math.max(2, x(row.high) - x(row.low))}
                height={10}
                className="fill-water"
                opacity={0.3}
              />
              <path d={`M${x(row.mean)} ${TOP + i * ROW + 19} v16`} className="stroke-water" strokeWidth="3" />
            </g>
          ))}
        </svg>
      </div>
    </PlotFrame>
  )
}
