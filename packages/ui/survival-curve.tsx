'use client'
import { dayNumber } from '@almanac/units/calendar/calendar-day'
import { formatLongMonth, formatMonth } from '@almanac/units/format-day'
import { formatPercent } from '@almanac/units/format-number'
import { useWords } from '@almanac/words/use-words'
import { scaleLinear } from 'd3-scale'
import { area, curveMonotoneX, line } from 'd3-shape'
import { yearTicks } from './day-scale.ts'
import { useDisplay } from './display.tsx'
import { layoutLabels } from './label-layout.ts'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import { PlotReader } from './plot-reader.tsx'
import { useWidth } from './use-width.ts'

/** Chance, 0 to 1, that the bed still works on a day, with the band of what it may be. */
export type SurvivalPoint = { day: string; alive: number; low?: number; high?: number }

export type SurvivalCurveProps = {
  title: string
  /** In order of days; at least two. */
  points: readonly SurvivalPoint[]
  today: string
  /** Days by which 10, 50 and 90 of 100 such beds have failed; leave out one that is not known. */
  due?: { early?: string; middle?: string; late?: string }
}

const height = 300
const top = 24
const bottom = height - 52
const left = 48
const right = 12

/** A bed's survival curve with its band, today marked, and the early, middle and late due dates dropped to the axis. */
export function SurvivalCurve({ title, points, today, due = {} }: SurvivalCurveProps) {
  const display = useDisplay()
  const plot = useWords('plot')
  const [ref, width] = useWidth<HTMLDivElement>(760)
  const first = points[0]
  const last = points.at(-1)
  if (!first || !last || first.day >= last.day) return <p className="text-soft">{plot('noCurve')}</p>

  const x = scaleLinear([dayNumber(first.day), dayNumber(last.day)], [left, width - right])
  const y = scaleLinear([0, 1], [bottom, top])
  const at = (day: string) => x(dayNumber(day))
  const inside = (day: string) => day >= first.day && day <= last.day
  const curve = line<SurvivalPoint>(
    (p) => at(p.day),
    (p) => y(p.alive),
  ).curve(curveMonotoneX)(points)
  const banded = points.filter((p) => p.low !== undefined && p.high !== undefined)
  const band = area<SurvivalPoint>(
    (p) => at(p.day),
    (p) => y(p.low ?? p.alive),
    (p) => y(p.high ?? p.alive),
  ).curve(curveMonotoneX)(banded)

  const marks = [
    { day: due.early, share: 0.9, word: 'early' as const },
    { day: due.middle, share: 0.5, word: 'middle' as const },
    { day: due.late, share: 0.1, word: 'late' as const },
  ].flatMap((m) => (m.day && inside(m.day) ? [{ ...m, day: m.day, label: plot(m.word, { month: formatMonth(m.day, display) }) }] : []))
  const places = layoutLabels(
    marks.map((m) => ({ at: at(m.day), size: m.label.length * 7 })),
    10,
    left - 30,
    width,
  )
  const words = (p: SurvivalPoint) => {
    const working = { month: formatLongMonth(p.day, display), share: formatPercent(p.alive, display) }
    if (p.low === undefined || p.high === undefined) return plot('working', working)
    return plot('workingBetween', { ...working, low: formatPercent(p.low, display), high: formatPercent(p.high, display) })
  }
  const start = points.findIndex((p) => p.day >= today)

  return (
    <PlotFrame
      title={title}
      table={{
        heads: [plot('month'), plot('stillWorking'), plot('low'), plot('high')],
        rows: points.map((p) => [
          formatLongMonth(p.day, display),
          formatPercent(p.alive, display),
          p.low === undefined ? '–' : formatPercent(p.low, display),
          p.high === undefined ? '–' : formatPercent(p.high, display),
        ]),
      }}
      legend={
        <>
          <LegendItem sign={<path d="M0 2 C8 2 12 10 22 10" className="fill-none stroke-ink" strokeWidth="2" />}>
            {plot('chanceWorking')}
          </LegendItem>
          {banded.length ? (
            <LegendItem sign={<rect width="22" height="12" className="fill-water" opacity=".2" />}>{plot('maybe')}</LegendItem>
          ) : null}
        </>
      }
    >
      <div ref={ref}>
        <PlotReader
          label={plot('readCurve')}
          at={points.map((p) => at(p.day))}
          words={(i) => words(points[i] ?? first)}
          first={Math.max(0, start)}
          height={height}
        >
          {(index) => {
            const read = index === null ? undefined : points[index]
            return (
              <svg aria-hidden="true" width={width} height={height} className="block max-w-full text-small">
                {[0, 0.25, 0.5, 0.75, 1].map((v) => (
                  <g key={v}>
                    <path d={`M${left} ${y(v)} H${width - right}`} className="stroke-line" />
                    <text x={left - 8} y={y(v) + 4.5} textAnchor="end" className="fill-soft">
                      {formatPercent(v, display)}
                    </text>
                  </g>
                ))}
                {band ? <path d={band} className="fill-water" opacity=".2" /> : null}
                {inside(today) ? (
                  <g>
                    <path d={`M${at(today)} ${top - 6} V${bottom}`} className="stroke-ink" strokeDasharray="2 3" />
                    <text
                      x={at(today)}
                      y={top - 11}
                      textAnchor={at(today) < left + 20 ? 'start' : at(today) > width - 30 ? 'end' : 'middle'}
                      className="fill-ink"
                    >
                      {plot('today')}
                    </text>
                  </g>
                ) : null}
                <path d={curve ?? ''} className="fill-none stroke-ink" strokeWidth="2" />
                {marks.map((m, i) => (
                  <g key={m.word}>
                    <path
                      d={`M${at(m.day)} ${y(m.share)} V${bottom} L${places[i] ?? 0} ${bottom + 30}`}
                      className="fill-none stroke-water"
                    />
                    <circle cx={at(m.day)} cy={y(m.share)} r="4" className="fill-paper stroke-water" strokeWidth="2" />
                    <text x={places[i]} y={bottom + 45} textAnchor="middle" className="fill-water">
                      {m.label}
                    </text>
                  </g>
                ))}
                {yearTicks(first.day, last.day, Math.max(2, Math.floor(width / 90))).map((t) => {
                  const tx = left + t.share * (width - right - left)
                  return (
                    <g key={t.year}>
                      <path d={`M${tx} ${bottom} v5`} className="stroke-ink" />
                      <text
                        x={tx}
                        y={bottom + 19}
                        textAnchor="middle"
                        strokeWidth="4"
                        className="fill-soft stroke-paper [paint-order:stroke]"
                      >
                        {t.year}
                      </text>
                    </g>
                  )
                })}
                {read ? (
                  <g className="stroke-ink">
                    <path d={`M${at(read.day)} ${top} V${bottom}`} />
                    <circle cx={at(read.day)} cy={y(read.alive)} r="4.5" className="fill-ink" />
                  </g>
                ) : null}
              </svg>
            )
          }}
        </PlotReader>
      </div>
    </PlotFrame>
  )
}
