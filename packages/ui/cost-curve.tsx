'use client'
import { withUnit } from '@almanac/units/format-number'
import { scaleLinear } from 'd3-scale'
import { area, curveMonotoneX, line } from 'd3-shape'
import { useDisplay } from './display.tsx'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import { PlotReader } from './plot-reader.tsx'
import { useWidth } from './use-width.ts'

/** Cost a year of rebedding at an age, with the band of what it may be. */
export type CostAtAge = { ageYears: number; cost: number; low: number; high: number }

export type CostCurveProps = {
  title: string
  /** In order of age; at least two. */
  points: readonly CostAtAge[]
  /** Ages between which it costs as good as the least. */
  window: { fromYears: number; toYears: number } | null
  bestAge: number | null
  /** What waiting for the failure costs a year. */
  runToFailure: number
  /** An amount as money. */
  money: (amount: number) => string
}

const height = 300
const top = 30
const bottom = height - 44
const left = 64
const right = 12

/** Cost a year against the age at rebed: a valley whose floor is the due window; waiting for the failure as a dotted line. */
export function CostCurve({ title, points, window, bestAge, runToFailure, money }: CostCurveProps) {
  const display = useDisplay()
  const [ref, width] = useWidth<HTMLDivElement>(900)
  const first = points[0]
  const last = points.at(-1)
  if (!first || !last) return null
  const least = Math.min(...points.map((p) => p.cost))
  // A very early rebed costs many times the least; the valley is what matters, so the sheet ends at three times its floor.
  const most = Math.min(3 * least, Math.max(runToFailure * 1.15, ...points.map((p) => p.high)))
  const x = scaleLinear([first.ageYears, last.ageYears], [left, width - right])
  const y = scaleLinear([0, most], [bottom, top]).clamp(true)
  const at = (p: CostAtAge) => x(p.ageYears)
  const band = area<CostAtAge>(
    at,
    (p) => y(p.low),
    (p) => y(p.high),
  ).curve(curveMonotoneX)(points)
  const curve = line<CostAtAge>(at, (p) => y(p.cost)).curve(curveMonotoneX)(points)
  const words = (p: CostAtAge) =>
    `rebed at ${p.ageYears} years: ${money(p.cost)} a year and bed, between ${money(p.low)} and ${money(p.high)} four times out of five`
  const start = bestAge === null ? 0 : points.findIndex((p) => p.ageYears >= bestAge)
  return (
    <PlotFrame
      title={title}
      table={{
        heads: ['Rebed at, years', 'Cost a year', 'Low (1 in 10)', 'High (1 in 10)'],
        rows: points.map((p) => [String(p.ageYears), money(p.cost), money(p.low), money(p.high)]),
      }}
      legend={
        <>
          <LegendItem sign={<path d="M0 2 C6 12 16 12 22 6" className="fill-none stroke-ink" strokeWidth="2" />}>
            cost a year and bed
          </LegendItem>
          <LegendItem sign={<rect width="22" height="12" className="fill-water" opacity=".2" />}>
            what it may be, not knowing exactly how long beds last
          </LegendItem>
          {window ? (
            <LegendItem sign={<rect width="22" height="12" className="fill-done" opacity=".22" />}>within 5% of the cheapest</LegendItem>
          ) : null}
          <LegendItem sign={<path d="M0 6 h22" className="stroke-danger" strokeWidth="1.5" strokeDasharray="2 4" />}>
            waiting for the failure
          </LegendItem>
        </>
      }
    >
      <div ref={ref}>
        <PlotReader
          label="Read the cost by age"
          at={points.map(at)}
          words={(i) => words(points[i] ?? first)}
          first={Math.max(0, start)}
          height={height}
        >
          {(index) => (
            <svg aria-hidden="true" width={width} height={height} className="block max-w-full text-small">
              {window ? (
                <rect
                  x={x(Math.max(first.ageYears, window.fromYears))}
                  width={Math.max(2, x(Math.min(last.ageYears, window.toYears)) - x(Math.max(first.ageYears, window.fromYears)))}
                  y={top - 12}
                  height={bottom - top + 12}
                  className="fill-done"
                  opacity=".16"
                />
              ) : null}
              {y.ticks(5).map((v) => (
                <g key={v}>
                  <path d={`M${left} ${y(v)} H${width - right}`} className="stroke-line" />
                  <text x={left - 8} y={y(v) + 4.5} textAnchor="end" className="fill-soft">
                    {money(v)}
                  </text>
                </g>
              ))}
              <path d={band ?? ''} className="fill-water" opacity=".2" />
              <path d={curve ?? ''} className="fill-none stroke-ink" strokeWidth="2" />
              <path d={`M${left} ${y(runToFailure)} H${width - right}`} className="stroke-danger" strokeWidth="1.5" strokeDasharray="2 4" />
              {bestAge === null ? null : (
                <g>
                  <path d={`M${x(bestAge)} ${top - 12} V${bottom}`} className="stroke-done" strokeWidth="1.5" />
                  <text x={x(bestAge)} y={top - 17} textAnchor="middle" className="fill-done font-semibold">
                    cheapest: {withUnit(bestAge, 1, 'years', display)}
                  </text>
                </g>
              )}
              {x.ticks(Math.max(3, Math.floor(width / 80))).map((v) => (
                <g key={v}>
                  <path d={`M${x(v)} ${bottom} v5`} className="stroke-ink" />
                  <text x={x(v)} y={bottom + 19} textAnchor="middle" className="fill-soft">
                    {v}
                  </text>
                </g>
              ))}
              <text x={width - right} y={bottom + 38} textAnchor="end" className="fill-soft">
                age at rebed, years
              </text>
              {index === null || !points[index] ? null : (
                <g className="stroke-ink">
                  <path d={`M${at(points[index])} ${top} V${bottom}`} />
                  <circle cx={at(points[index])} cy={y(points[index].cost)} r="4.5" className="fill-ink" />
                </g>
              )}
            </svg>
          )}
        </PlotReader>
      </div>
    </PlotFrame>
  )
}
