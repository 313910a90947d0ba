'use client'
import { formatLongMonth, monthLabel } from '@almanac/units/format-day'
import { showWhole } from '@almanac/units/format-number'
import { scaleLinear } from 'd3-scale'
import { useDisplay } from './display.tsx'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import { useWidth } from './use-width.ts'

/** One month in hours: what its rebeds need with the likely range, what is booked, and what the crews have. */
export type HoursMonth = { month: string; rebeds: number; needed: number; low: number; high: number; booked: number; capacity: number }

export type HoursPlotProps = {
  title: string
  /** Months in order, `month` as 'YYYY-MM'. */
  months: readonly HoursMonth[]
  /** The chosen month, 'YYYY-MM'. Pressing it again chooses none. */
  selected: string | null
  onSelect: (month: string | null) => void
}

const height = 240
const top = 26
const bottom = height - 30
const left = 44
/** Less than this is no month short of hours but rounding. */
export const SHORT_FROM_HOURS = 1

/** Hours needed by month as bands, booked hours as bars, and the crews' hours as a line of steps; where the line lies below the need, the gap is hatched and named. */
export function HoursPlot({ title, months, selected, onSelect }: HoursPlotProps) {
  const display = useDisplay()
  const [ref, width] = useWidth<HTMLDivElement>(1000)
  // Crews with many times the hours needed would press the need flat: their line then runs along the top.
  const needed = Math.max(8, ...months.map((m) => Math.max(m.high, m.booked)))
  const most = Math.min(needed * 2, Math.max(needed, ...months.map((m) => m.capacity)))
  const y = scaleLinear([0, most * 1.06], [bottom, top]).clamp(true)
  const isBeyond = months.some((m) => m.capacity > most * 1.06)
  const slot = months.length ? (width - left) / months.length : 0
  const band = Math.min(72, slot * 0.76)
  const bar = Math.min(28, slot * 0.3)
  const x = (i: number, wide: number) => left + slot * i + (slot - wide) / 2
  const narrow = slot < 46
  const whole = (hours: number) => showWhole(hours, display)
  const shortOf = (m: HoursMonth) => (m.needed - m.capacity >= SHORT_FROM_HOURS ? m.needed - m.capacity : 0)
  const words = (m: HoursMonth) =>
    `${formatLongMonth(m.month, display)}: ${whole(m.rebeds)} rebeds, ${whole(m.needed)} h needed, likely ${whole(m.low)} to ${whole(m.high)}, ${whole(m.booked)} h booked, crews have ${whole(m.capacity)} h` +
    (shortOf(m) > 0 ? `, ${whole(shortOf(m))} h short` : '')
  const steps = months.map((m, i) => `${i === 0 ? 'M' : 'L'}${left + slot * i} ${y(m.capacity)} h${slot}`).join(' ')
  return (
    <PlotFrame
      title={title}
      table={{
        heads: ['Month', 'Rebeds', 'Needed, h', 'Low (1 in 10)', 'High (1 in 10)', 'Booked, h', 'Crews have, h', 'Short, h'],
        rows: months.map((m) => [
          formatLongMonth(m.month, display),
          ...[m.rebeds, m.needed, m.low, m.high, m.booked, m.capacity].map(whole),
          shortOf(m) > 0 ? whole(shortOf(m)) : '–',
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
            hours needed, likely range (80%)
          </LegendItem>
          <LegendItem sign={<rect x="6" width="10" height="12" className="fill-bead" />}>booked</LegendItem>
          <LegendItem sign={<path d="M0 9 h11 v-6 h11" className="fill-none stroke-ink" strokeWidth="1.5" />}>
            {isBeyond ? 'crew hours left for rebeds; at the top: more' : 'crew hours left for rebeds'}
          </LegendItem>
        </>
      }
    >
      <div ref={ref} className="relative" style={{ height }}>
        <svg aria-hidden="true" width={width} height={height} className="absolute inset-0 text-small">
          <defs>
            <pattern id="hours-short" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
              <path d="M0 0 V6" className="stroke-danger" strokeWidth="2" />
            </pattern>
          </defs>
          {y.ticks(4).map((v) => (
            <g key={v}>
              <path d={`M${left} ${y(v)} H${width}`} className="stroke-line" />
              <text x={left - 8} y={y(v) + 4.5} textAnchor="end" className="fill-soft">
                {v === y.ticks(4).at(-1) ? `${whole(v)} h` : whole(v)}
              </text>
            </g>
          ))}
          {months.map((m, i) => (
            <g key={m.month}>
              {selected === m.month ? (
                <path
                  d={`M${left + slot * i + 1} ${top - 20} h${slot - 2} V${height - 1} h${2 - slot}z`}
                  className="fill-wash stroke-ink"
                />
              ) : null}
              <rect
                x={x(i, band)}
                width={band}
                y={y(m.high)}
                height={Math.max(1, y(m.low) - y(m.high))}
                className="fill-water"
                opacity=".2"
              />
              <rect x={x(i, bar)} width={bar} y={y(m.booked)} height={Math.max(0, bottom - y(m.booked))} className="fill-bead" />
              {shortOf(m) > 0 ? (
                <rect
                  x={x(i, band)}
                  width={band}
                  y={y(m.needed)}
                  height={Math.max(0, y(m.capacity) - y(m.needed))}
                  fill="url(#hours-short)"
                />
              ) : null}
              <path d={`M${x(i, band)} ${y(m.needed)} h${band}`} className="stroke-water" strokeWidth="3" />
              {shortOf(m) > 0 && !narrow ? (
                <text
                  x={left + slot * (i + 0.5)}
                  y={y(Math.max(m.high, m.capacity)) - 6}
                  textAnchor="middle"
                  className="fill-danger font-semibold"
                >
                  {`${whole(shortOf(m))} h short`}
                </text>
              ) : null}
              <text
                x={left + slot * (i + 0.5)}
                y={bottom + 19}
                textAnchor="middle"
                className={shortOf(m) > 0 ? 'fill-danger font-semibold' : selected === m.month ? 'fill-ink font-semibold' : 'fill-soft'}
              >
                {monthLabel(m.month, narrow, display)}
              </text>
            </g>
          ))}
          <path d={steps} className="fill-none stroke-ink" strokeWidth="1.5" />
        </svg>
        <ul className="absolute inset-y-0 right-0 flex" style={{ left }}>
          {months.map((m) => (
            <li key={m.month} className="flex-1">
              <button
                type="button"
                aria-label={words(m)}
                title={words(m)}
                aria-pressed={selected === m.month}
                onClick={() => onSelect(selected === m.month ? null : m.month)}
                className="block size-full hover:bg-ink/5"
              />
            </li>
          ))}
        </ul>
      </div>
    </PlotFrame>
  )
}
