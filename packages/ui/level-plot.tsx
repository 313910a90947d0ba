'use client'
import { formatLongMonth, monthLabel } from '@almanac/units/format-day'
import { showFixed, showWhole } from '@almanac/units/format-number'
import { scaleLinear } from 'd3-scale'
import { useDisplay } from './display.tsx'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import { PlotReader } from './plot-reader.tsx'
import { useWidth } from './use-width.ts'

/** One month of a plan, with what it takes; resin and gravel in the units named beside. */
export type LevelMonth = { month: string; rebeds: number; hours: number; overtimeHours: number; resin: number; gravel: number }

export type LevelPlotProps = {
  title: string
  months: readonly LevelMonth[]
  /** Rebeds your crews can do in a month. */
  capacity: number
  units: { resin: string; gravel: string }
}

const height = 200
const top = 14
const bottom = height - 30
const left = 36

/** A plan's rebeds by month as bars against crew capacity; the materials and hours stand in its words and its table. */
export function LevelPlot({ title, months, capacity, units }: LevelPlotProps) {
  const display = useDisplay()
  const [ref, width] = useWidth<HTMLDivElement>(1000)
  const first = months[0]
  if (!first) return null
  const y = scaleLinear([0, Math.max(4, capacity, ...months.map((m) => m.rebeds)) * 1.1], [bottom, top])
  const slot = (width - left) / months.length
  const bar = Math.min(40, slot * 0.66)
  const x = (i: number) => left + slot * (i + 0.5)
  const words = (m: LevelMonth) =>
    `${formatLongMonth(m.month, display)}: ${m.rebeds} rebeds, ${showWhole(m.hours, display)} crew hours` +
    (m.overtimeHours >= 1 ? ` (${showWhole(m.overtimeHours, display)} more than there are)` : '') +
    `, resin ${showWhole(m.resin, display)} ${units.resin}, gravel ${showWhole(m.gravel, display)} ${units.gravel}`
  return (
    <PlotFrame
      title={title}
      table={{
        heads: ['Month', 'Rebeds', 'Crew hours', 'Hours over capacity', `Resin, ${units.resin}`, `Gravel, ${units.gravel}`],
        rows: months.map((m) => [
          formatLongMonth(m.month, display),
          String(m.rebeds),
          showWhole(m.hours, display),
          showWhole(m.overtimeHours, display),
          showFixed(m.resin, units.resin === 'L' ? 0 : 1, display),
          showWhole(m.gravel, display),
        ]),
      }}
      legend={
        <>
          <LegendItem sign={<rect x="5" width="12" height="12" className="fill-water" />}>rebeds planned</LegendItem>
          <LegendItem sign={<path d="M0 6 h22" className="stroke-ink" strokeWidth="1.5" strokeDasharray="2 4" />}>crew capacity</LegendItem>
        </>
      }
    >
      <div ref={ref}>
        <PlotReader
          label="Read the plan month by month"
          at={months.map((_, i) => x(i))}
          words={(i) => words(months[i] ?? first)}
          height={height}
        >
          {(index) => (
            <svg aria-hidden="true" width={width} height={height} className="block max-w-full text-small">
              {y
                .ticks(4)
                .filter(Number.isInteger)
                .map((v) => (
                  <g key={v}>
                    <path d={`M${left} ${y(v)} H${width}`} className="stroke-line" />
                    <text x={left - 10} y={y(v) + 4.5} textAnchor="end" className="fill-soft">
                      {v}
                    </text>
                  </g>
                ))}
              {months.map((m, i) => (
                <g key={m.month}>
                  <rect
                    x={x(i) - bar / 2}
                    width={bar}
                    y={y(m.rebeds)}
                    height={bottom - y(m.rebeds)}
                    className="fill-water"
                    opacity={index === i ? 1 : 0.75}
                  />
                  <text x={x(i)} y={bottom + 18} textAnchor="middle" className="fill-soft">
                    {m.month.endsWith('-01')
                      ? m.month.slice(slot < 34 ? 2 : 0, 4)
                      : slot < 26
                        ? ''
                        : monthLabel(m.month, slot < 34, display)}
                  </text>
                </g>
              ))}
              <path d={`M${left} ${y(capacity)} H${width}`} className="stroke-ink" strokeWidth="1.5" strokeDasharray="2 4" />
            </svg>
          )}
        </PlotReader>
      </div>
    </PlotFrame>
  )
}
