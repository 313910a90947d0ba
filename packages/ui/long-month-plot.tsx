'use client'
import { formatLongMonth } from '@almanac/units/format-day'
import { showFixed, showNumber } from '@almanac/units/format-number'
import { scaleLinear } from 'd3-scale'
import { area, line } from 'd3-shape'
import { useDisplay } from './display.tsx'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import { PlotReader } from './plot-reader.tsx'
import { useWidth } from './use-width.ts'

/** One month of a long picture; `planned` where a plan reaches it. */
export type LongMonth = { month: string; mean: number; low: number; high: number; planned?: number }

export type LongMonthPlotProps = {
  title: string
  /** Months in order, 'YYYY-MM'; at least two. */
  months: readonly LongMonth[]
  /** Rebeds your crews can do in a month. */
  capacity: number
}

const height = 260
const top = 16
const bottom = height - 28
const left = 36
const right = 8

/** Years of months on one sheet: the band of beds that may fail, the middle, bars for the rebeds planned, and crew capacity. */
export function LongMonthPlot({ title, months, capacity }: LongMonthPlotProps) {
  const display = useDisplay()
  const [ref, width] = useWidth<HTMLDivElement>(1000)
  const first = months[0]
  if (!first || months.length < 2) return null
  const most = Math.max(4, capacity, ...months.map((m) => Math.max(m.high, m.planned ?? 0)))
  const y = scaleLinear([0, most * 1.08], [bottom, top])
  const slot = (width - left - right) / months.length
  const x = (i: number) => left + slot * (i + 0.5)
  const planned = months.some((m) => m.planned !== undefined)
  const at = months.map((m, i) => ({ ...m, x: x(i) }))
  const band = area<(typeof at)[number]>(
    (m) => m.x,
    (m) => y(m.low),
    (m) => y(m.high),
  )(at)
  const middle = line<(typeof at)[number]>(
    (m) => m.x,
    (m) => y(m.mean),
  )(at)
  const words = (m: LongMonth) =>
    `${formatLongMonth(m.month, display)}: ${showNumber(m.mean, 1, display)} expected to fail, ${showNumber(m.low, 1, display)} to ${showNumber(m.high, 1, display)} four times out of five` +
    (m.planned === undefined ? '' : `; ${m.planned} planned to be rebedded before that`)
  const everyYear = slot * 12 >= 44 ? 1 : 2
  return (
    <PlotFrame
      title={title}
      table={{
        heads: ['Month', 'Expected to fail', 'Low (1 in 10)', 'High (1 in 10)', ...(planned ? ['Rebeds planned'] : []), 'Crews can do'],
        rows: months.map((m) => [
          formatLongMonth(m.month, display),
          showFixed(m.mean, 1, display),
          showFixed(m.low, 1, display),
          showFixed(m.high, 1, display),
          ...(planned ? [m.planned === undefined ? '–' : String(m.planned)] : []),
          showNumber(capacity, 1, display) ?? '',
        ]),
      }}
      legend={
        <>
          <LegendItem
            sign={
              <>
                <rect width="22" height="12" className="fill-water" opacity=".2" />
                <path d="M0 6 h22" className="stroke-water" strokeWidth="2.5" />
              </>
            }
          >
            expected to fail if nothing is done, and the likely range (80%)
          </LegendItem>
          {planned ? (
            <LegendItem sign={<rect x="7" width="8" height="12" className="fill-bead" opacity=".65" />}>rebeds planned</LegendItem>
          ) : null}
          <LegendItem sign={<path d="M0 6 h22" className="stroke-ink" strokeWidth="1.5" strokeDasharray="2 4" />}>crew capacity</LegendItem>
        </>
      }
    >
      <div ref={ref}>
        <PlotReader label="Read the chart month by month" at={at.map((m) => m.x)} words={(i) => words(months[i] ?? first)} height={height}>
          {(index) => (
            <svg aria-hidden="true" width={width} height={height} className="block max-w-full text-small">
              {y
                .ticks(4)
                .filter(Number.isInteger)
                .map((v) => (
                  <g key={v}>
                    <path d={`M${left} ${y(v)} H${width - right}`} className="stroke-line" />
                    <text x={left - 10} y={y(v) + 4.5} textAnchor="end" className="fill-soft">
                      {v}
                    </text>
                  </g>
                ))}
              {at.map((m) =>
                m.planned ? (
                  <rect
                    key={m.month}
                    x={m.x - slot * 0.3}
                    width={slot * 0.6}
                    y={y(m.planned)}
                    height={bottom - y(m.planned)}
                    className="fill-bead"
                    opacity=".65"
                  />
                ) : null,
              )}
              <path d={band ?? ''} className="fill-water" opacity=".2" />
              <path d={middle ?? ''} className="fill-none stroke-water" strokeWidth="2.5" />
              <path d={`M${left} ${y(capacity)} H${width - right}`} className="stroke-ink" strokeWidth="1.5" strokeDasharray="2 4" />
              {at.map((m) =>
                m.month.endsWith('-01') && Number(m.month.slice(0, 4)) % everyYear === 0 ? (
                  <g key={m.month}>
                    <path d={`M${m.x - slot / 2} ${bottom} v6`} className="stroke-ink" />
                    <text x={m.x - slot / 2 + 4} y={bottom + 19} className="fill-soft">
                      {m.month.slice(0, 4)}
                    </text>
                  </g>
                ) : null,
              )}
              {index === null || !at[index] ? null : <path d={`M${at[index].x} ${top} V${bottom}`} className="stroke-ink" />}
            </svg>
          )}
        </PlotReader>
      </div>
    </PlotFrame>
  )
}
