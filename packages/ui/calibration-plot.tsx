'use client'
import { formatPercent, showWhole } from '@almanac/units/format-number'
import { scaleLinear } from 'd3-scale'
import { useDisplay } from './display.tsx'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import { PlotReader } from './plot-reader.tsx'
import { useWidth } from './use-width.ts'

export type CalibrationPlotProps = {
  title: string
  /** How many outcomes fell into each tenth of their forecast, earliest first. */
  tenths: readonly number[]
}

const height = 260
const top = 18
const bottom = height - 50
const left = 44
const NAMES = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'last']

/** Where outcomes fell in what was forecast: honest forecasts fill all ten bars alike, too early ones the right, too late ones the left, too sure ones both ends. */
export function CalibrationPlot({ title, tenths }: CalibrationPlotProps) {
  const display = useDisplay()
  const [ref, width] = useWidth<HTMLDivElement>(700)
  const total = tenths.reduce((sum, n) => sum + n, 0)
  if (total === 0) return null
  const shares = tenths.map((n) => n / total)
  const y = scaleLinear([0, Math.max(0.16, ...shares) * 1.08], [bottom, top])
  const slot = (width - left) / tenths.length
  const x = (i: number) => left + slot * i
  const words = (i: number) =>
    `${NAMES[i]} tenth of the forecast${i === 0 ? ', before the early date' : i === 9 ? ', after the late date' : ''}: ${formatPercent(shares[i] ?? 0, display, 1)} of outcomes, where ${formatPercent(0.1, display)} are expected`
  const narrow = width < 520
  return (
    <PlotFrame
      title={title}
      table={{
        heads: ['Tenth of the forecast', 'Outcomes', 'Share', 'Expected'],
        rows: tenths.map((n, i) => [
          `${NAMES[i]}${i === 0 ? ' (before the early date)' : i === 9 ? ' (after the late date)' : ''}`,
          showWhole(n, display),
          formatPercent(shares[i] ?? 0, display, 1),
          formatPercent(0.1, display),
        ]),
      }}
      legend={
        <>
          <LegendItem sign={<rect x="4" width="14" height="12" className="fill-water" />}>share of what came</LegendItem>
          <LegendItem sign={<path d="M0 6 h22" className="stroke-ink" strokeWidth="1.5" strokeDasharray="2 4" />}>
            if every forecast were honest
          </LegendItem>
        </>
      }
    >
      <div ref={ref}>
        <PlotReader label="Read the chart tenth by tenth" at={tenths.map((_, i) => x(i) + slot / 2)} words={words} height={height}>
          {(index) => (
            <svg aria-hidden="true" width={width} height={height} className="block max-w-full text-small">
              {y.ticks(4).map((v) => (
                <g key={v}>
                  <path d={`M${left} ${y(v)} H${width}`} className="stroke-line" />
                  <text x={left - 8} y={y(v) + 4.5} textAnchor="end" className="fill-soft">
                    {formatPercent(v, display)}
                  </text>
                </g>
              ))}
              {shares.map((part, i) => (
                <rect
                  key={NAMES[i]}
                  x={x(i) + slot * 0.12}
                  width={slot * 0.76}
                  y={y(part)}
                  height={bottom - y(part)}
                  className="fill-water"
                  opacity={index === i ? 1 : i === 0 || i === 9 ? 0.45 : 0.75}
                />
              ))}
              <path d={`M${left} ${y(0.1)} H${width}`} className="stroke-ink" strokeWidth="1.5" strokeDasharray="2 4" />
              <path d={`M${x(1)} ${bottom + 6} H${x(9)}`} className="stroke-ink" />
              <text x={(x(1) + x(9)) / 2} y={bottom + 24} textAnchor="middle" className="fill-ink">
                {narrow ? 'inside the window' : 'inside the due window we gave'}
              </text>
              <text x={x(0)} y={bottom + 42} className="fill-soft">
                earlier
              </text>
              <text x={width} y={bottom + 42} textAnchor="end" className="fill-soft">
                later
              </text>
            </svg>
          )}
        </PlotReader>
      </div>
    </PlotFrame>
  )
}
