'use client'
import { formatLongMonth, monthLabel } from '@almanac/units/format-day'
import { showFixed, showNumber } from '@almanac/units/format-number'
import { scaleLinear } from 'd3-scale'
import { useDisplay } from './display.tsx'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import { useWidth } from './use-width.ts'

/** One month: how many rebeds to expect, the band that holds four outcomes of five, and what is booked already. */
export type PlotMonth = { month: string; mean: number; p10: number; p90: number; booked: number }

export type MonthPlotProps = {
  title: string
  /** Months in order, `month` as 'YYYY-MM'. */
  months: readonly PlotMonth[]
  /** The chosen month, 'YYYY-MM'. Pressing it again chooses none. */
  selected?: string | null
  onSelect?: (month: string | null) => void
}

const height = 250
const top = 16
const bottom = height - 30
const left = 36
const dotGap = 12

/** Beds coming due per month: band from p10 to p90, line at the mean, dots for booked jobs. */
export function MonthPlot({ title, months, selected, onSelect }: MonthPlotProps) {
  const display = useDisplay()
  const [ref, width] = useWidth<HTMLDivElement>(1000)
  const most = Math.max(4, ...months.map((m) => Math.max(m.p90, m.booked)))
  const y = scaleLinear([0, most * 1.08], [bottom, top])
  const slot = months.length ? (width - left) / months.length : 0
  const barWidth = Math.min(64, slot * 0.64)
  const x = (i: number) => left + slot * i + (slot - barWidth) / 2
  const narrow = slot < 34
  const dotR = narrow ? 2.5 : 4.5
  const perRow = Math.max(1, Math.floor((barWidth + 4) / (narrow ? 7 : dotGap)))
  const words = (m: PlotMonth) =>
    `${formatLongMonth(m.month, display)}: ${showNumber(m.mean, 1, display)} rebeds expected, ${showNumber(m.p10, 1, display)} to ${showNumber(m.p90, 1, display)} four times out of five, ${m.booked} booked`

  return (
    <PlotFrame
      title={title}
      table={{
        heads: ['Month', 'Expected', 'Low (1 in 10)', 'High (1 in 10)', 'Booked'],
        rows: months.map((m) => [
          formatLongMonth(m.month, display),
          showFixed(m.mean, 1, display),
          showFixed(m.p10, 1, display),
          showFixed(m.p90, 1, display),
          String(m.booked),
        ]),
      }}
      legend={
        <>
          <LegendItem
            sign={
              <>
                <rect width="22" height="12" className="fill-water" opacity=".2" />
                <path d="M0 6 h22" className="stroke-water" strokeWidth="3" />
              </>
            }
          >
            expected, and the likely range (80%)
          </LegendItem>
          <LegendItem sign={<circle cx="11" cy="6" r="4.5" className="fill-bead" />}>already booked</LegendItem>
        </>
      }
    >
      <div ref={ref} className="relative" style={{ height }}>
        <svg aria-hidden="true" width={width} height={height} className="absolute inset-0 text-small">
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
              {selected === m.month ? (
                <path d={`M${left + slot * i + 1} ${top - 8} h${slot - 2} V${height - 1} h${2 - slot}z`} className="fill-wash stroke-ink" />
              ) : null}
              <rect x={x(i)} width={barWidth} y={y(m.p90)} height={Math.max(1, y(m.p10) - y(m.p90))} className="fill-water" opacity=".2" />
              <path d={`M${x(i)} ${y(m.mean)} h${barWidth}`} className="stroke-water" strokeWidth="3" />
              {Array.from({ length: m.booked }, (_, k) => k).map((k) => (
                <circle
                  key={k}
                  cx={x(i) + dotR + (k % perRow) * (narrow ? 7 : dotGap)}
                  cy={bottom - dotR - 3 - Math.floor(k / perRow) * (narrow ? 7 : dotGap)}
                  r={dotR}
                  className="fill-bead"
                />
              ))}
              <text
                x={x(i) + barWidth / 2}
                y={bottom + 19}
                textAnchor="middle"
                className={selected === m.month ? 'fill-ink font-semibold' : 'fill-soft'}
              >
                {monthLabel(m.month, narrow, display)}
              </text>
            </g>
          ))}
        </svg>
        <ul className="absolute inset-y-0 right-0 flex" style={{ left }}>
          {months.map((m) => (
            <li key={m.month} className="flex-1">
              <button
                type="button"
                aria-label={words(m)}
                title={words(m)}
                aria-pressed={onSelect ? selected === m.month : undefined}
                onClick={() => onSelect?.(selected === m.month ? null : m.month)}
                className={`block size-full ${onSelect ? 'hover:bg-ink/5' : 'cursor-default!'}`}
              />
            </li>
          ))}
        </ul>
      </div>
    </PlotFrame>
  )
}
