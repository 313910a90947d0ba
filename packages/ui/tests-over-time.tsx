'use client'
import type { MeasuringPoint } from '@almanac/records/measuring-point'
import { dayNumber } from '@almanac/units/calendar/calendar-day'
import { isoDay } from '@almanac/units/calendar/day-number'
import { formatDay } from '@almanac/units/format-day'
import { useWords } from '@almanac/words/use-words'
import { scaleLinear } from 'd3-scale'
import { yearTicks } from './day-scale.ts'
import { useDisplay } from './display.tsx'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import { PlotReader } from './plot-reader.tsx'
import { useWidth } from './use-width.ts'

/** Where the water was drawn. */
export type PlottedPoint = MeasuringPoint

/** One value of one test. `below` says that the test only found "less than" the value. */
export type TestPoint = { day: string; value: number; point: PlottedPoint; below?: boolean }

export type TestsOverTimeProps = {
  /** "Hardness", "Free chlorine". */
  title: string
  unit: string
  tests: readonly TestPoint[]
  /** A line to compare with: "secondary limit 0.3 mg/L". */
  limit?: { value: number; label: string }
  /** Changes that matter for reading, as a new disinfectant. */
  changes?: readonly { day: string; label: string }[]
}

const height = 220
const top = 22
const bottom = height - 30
const left = 48
const right = 16
const signs: Record<PlottedPoint, { d: string; className: string }> = {
  raw: { d: 'M0 -4.5 a4.5 4.5 0 1 0 0.01 0z', className: 'fill-ink stroke-ink' },
  'softener-inlet': { d: 'M-4.2 -4.2 h8.4 v8.4 h-8.4z', className: 'fill-water stroke-water' },
  softened: { d: 'M0 -5 L5 4 H-5z', className: 'fill-paper stroke-ink' },
}

/** Water tests of one quantity over time, the measuring point told by shape. */
export function TestsOverTime({ title, unit, tests, limit, changes = [] }: TestsOverTimeProps) {
  const display = useDisplay()
  const words = useWords('plot')
  const [ref, width] = useWidth<HTMLDivElement>(760)
  const sorted = [...tests].sort((a, b) => a.day.localeCompare(b.day))
  const first = sorted[0]
  const last = sorted.at(-1)
  if (!first || !last) return <p className="text-soft">{words('noTest', { quantity: title.toLowerCase() })}</p>

  // A year of room at least, so that a single test stands in the middle and not on an edge.
  const pad = Math.max(60, (730 - (dayNumber(last.day) - dayNumber(first.day))) / 2)
  const days: [number, number] = [dayNumber(first.day) - pad, dayNumber(last.day) + pad]
  const x = scaleLinear(days, [left, width - right])
  const y = scaleLinear([0, Math.max(limit?.value ?? 0, ...sorted.map((t) => t.value), Number.MIN_VALUE) * 1.1], [bottom, top]).nice(4)
  const at = (day: string) => x(dayNumber(day))
  const figure = (t: TestPoint) => (t.below ? words('under', { value: `${t.value} ${unit}` }) : `${t.value} ${unit}`)
  const reading = (t: TestPoint) => `${formatDay(t.day, display)}, ${words(`point/${t.point}`)}: ${figure(t)}`
  const points = (Object.keys(signs) as PlottedPoint[]).filter((p) => sorted.some((t) => t.point === p))

  return (
    <PlotFrame
      title={`${title}, ${unit}`}
      showTitle
      table={{
        heads: [words('day'), words('drawn'), `${title}, ${unit}`],
        rows: sorted.map((t) => [formatDay(t.day, display), words(`point/${t.point}`), `${t.below ? '< ' : ''}${t.value}`]),
      }}
      legend={points.map((p) => (
        <LegendItem key={p} sign={<path d={signs[p].d} transform="translate(11 6)" className={signs[p].className} strokeWidth="1.5" />}>
          {words(`point/${p}`)}
        </LegendItem>
      ))}
    >
      <div ref={ref}>
        <PlotReader
          label={words('readTests', { quantity: title.toLowerCase() })}
          at={sorted.map((t) => at(t.day))}
          words={(i) => reading(sorted[i] ?? first)}
          first={sorted.length - 1}
          height={height}
        >
          {(index) => (
            <svg aria-hidden="true" width={width} height={height} className="block max-w-full text-small">
              {y.ticks(4).map((v) => (
                <g key={v}>
                  <path d={`M${left} ${y(v)} H${width - right}`} className="stroke-line" />
                  <text x={left - 8} y={y(v) + 4.5} textAnchor="end" className="fill-soft">
                    {v}
                  </text>
                </g>
              ))}
              {yearTicks(isoDay(days[0]), isoDay(days[1]), Math.max(2, Math.floor(width / 90))).map((t) => (
                <text key={t.year} x={left + t.share * (width - right - left)} y={bottom + 20} textAnchor="middle" className="fill-soft">
                  {t.year}
                </text>
              ))}
              {changes
                .filter((c) => dayNumber(c.day) >= days[0] && dayNumber(c.day) <= days[1])
                .map((c) => (
                  <g key={c.day}>
                    <path d={`M${at(c.day)} ${top - 4} V${bottom}`} className="stroke-soft" strokeDasharray="3 3" />
                    <text x={at(c.day)} y={top - 9} textAnchor={at(c.day) > width / 2 ? 'end' : 'start'} className="fill-soft">
                      {c.label}
                    </text>
                  </g>
                ))}
              {points.map((p) => (
                <polyline
                  key={p}
                  points={sorted
                    .filter((t) => t.point === p)
                    .map((t) => `${at(t.day)},${y(t.value)}`)
                    .join(' ')}
                  className="fill-none stroke-line"
                  strokeWidth="1.5"
                />
              ))}
              {limit ? (
                <g>
                  <path d={`M${left} ${y(limit.value)} H${width - right}`} className="stroke-danger" strokeDasharray="6 3" />
                  <text
                    x={width - right}
                    y={y(limit.value) - 5}
                    textAnchor="end"
                    strokeWidth="4"
                    className="fill-danger stroke-paper [paint-order:stroke]"
                  >
                    {limit.label}
                  </text>
                </g>
              ) : null}
              {sorted.map((t, i) => (
                <g key={`${t.day} ${t.point} ${t.value}`} transform={`translate(${at(t.day)} ${y(t.value)})`}>
                  {index === i ? <circle r="10" className="fill-none stroke-ink" strokeWidth="1.5" /> : null}
                  <path d={signs[t.point].d} className={signs[t.point].className} strokeWidth="1.5" />
                </g>
              ))}
            </svg>
          )}
        </PlotReader>
      </div>
    </PlotFrame>
  )
}
