'use client'
import type { Words } from '@almanac/words/words'
import { scaleLinear } from 'd3-scale'
import { line } from 'd3-shape'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import { PlotReader } from './plot-reader.tsx'
import type { PlotTable } from './plot-table.ts'
import { useWidth } from './use-width.ts'

/** One dose: where it stands along the axis, what it costs or takes a year, and its figures in words. `fault` says why it will not do. */
export type PlotDose = { dose: number; amount: number; words: string; fault: string | null }

export type DosePlotProps = {
  title: string
  /** Rising by dose. */
  doses: readonly PlotDose[]
  /** Index of the dose that is set, and of the best. */
  chosen: number
  best: number
  /** "Salt, lb/ft³". */
  axis: string
  doseText: (dose: number) => string
  amountText: (amount: number) => string
  table: PlotTable
  /** What the signs mean. */
  card: Words<'card'>
}

const height = 260
const top = 26
const bottom = height - 44
const left = 64
const right = 20

/** What each dose costs over a year, with the one set and the best marked; doses that will not do are hollow squares. */
export function DosePlot({ title, doses, chosen, best, axis, doseText, amountText, table, card }: DosePlotProps) {
  const [ref, width] = useWidth<HTMLDivElement>(760)
  const first = doses[0]
  const last = doses.at(-1)
  if (!first || !last) return <p className="text-soft">{card('plot/none')}</p>
  const amounts = doses.map((one) => one.amount)
  const x = scaleLinear([first.dose, last.dose], [left + 10, width - right - 10])
  const y = scaleLinear([Math.min(...amounts) * 0.85, Math.max(...amounts) * 1.04], [bottom, top]).nice(4)
  const curve = line<PlotDose>(
    (one) => x(one.dose),
    (one) => y(one.amount),
  )(doses)
  const ticks = x.ticks(Math.max(3, Math.floor(width / 110)))
  const set = doses[chosen] ?? first
  const word = card(chosen === best ? 'plot/bestAndSet' : 'plot/set')
  return (
    <PlotFrame
      title={title}
      showTitle
      table={table}
      legend={
        <>
          <LegendItem sign={<circle cx="11" cy="6" r="4.5" className="fill-water" />}>{card('plot/setDose')}</LegendItem>
          {doses.some((one) => one.fault) ? (
            <LegendItem sign={<rect x="7.5" y="2.5" width="7" height="7" className="fill-paper stroke-danger" strokeWidth="1.5" />}>
              {card('plot/wontDo')}
            </LegendItem>
          ) : null}
          {chosen === best ? null : (
            <LegendItem sign={<path d="M11 0.5 L16.5 11 H5.5z" className="fill-paper stroke-ink" strokeWidth="1.5" />}>
              {card('plot/theBest')}
            </LegendItem>
          )}
        </>
      }
    >
      <div ref={ref}>
        <PlotReader
          label={card('plot/read', { title: title.toLowerCase() })}
          at={doses.map((one) => x(one.dose))}
          words={(i) => (doses[i] ?? first).words}
          first={chosen}
          height={height}
        >
          {(index) => (
            <svg aria-hidden="true" width={width} height={height} className="block max-w-full text-small">
              {y.ticks(4).map((v) => (
                <g key={v}>
                  <path d={`M${left} ${y(v)} H${width - right}`} className="stroke-line" />
                  <text x={left - 8} y={y(v) + 4.5} textAnchor="end" className="fill-soft">
                    {amountText(v)}
                  </text>
                </g>
              ))}
              {ticks.map((v) => (
                <g key={v}>
                  <path d={`M${x(v)} ${bottom} v5`} className="stroke-ink" />
                  <text x={x(v)} y={bottom + 19} textAnchor="middle" className="fill-soft">
                    {doseText(v)}
                  </text>
                </g>
              ))}
              <text x={(left + width - right) / 2} y={height - 6} textAnchor="middle" className="fill-soft">
                {axis}
              </text>
              <path d={curve ?? ''} className="fill-none stroke-ink" strokeWidth="1.5" />
              {doses.map((one, i) => (
                <g key={one.dose} transform={`translate(${x(one.dose)} ${y(one.amount)})`}>
                  {index === i ? <circle r="10" className="fill-none stroke-ink" strokeWidth="1.5" /> : null}
                  {one.fault ? (
                    <rect x="-3.5" y="-3.5" width="7" height="7" className="fill-paper stroke-danger" strokeWidth="1.5" />
                  ) : (
                    <circle r="2.5" className="fill-ink" />
                  )}
                </g>
              ))}
              {best === chosen ? null : (
                <path
                  d="M0 -7 L6 5 H-6z"
                  transform={`translate(${x(doses[best]?.dose ?? 0)} ${y(doses[best]?.amount ?? 0)})`}
                  className="fill-paper stroke-ink"
                  strokeWidth="1.5"
                />
              )}
              <circle cx={x(set.dose)} cy={y(set.amount)} r="5.5" className="fill-water" />
              <text
                x={x(set.dose)}
                y={y(set.amount) + 22}
                textAnchor={x(set.dose) < left + 50 ? 'start' : x(set.dose) > width - 60 ? 'end' : 'middle'}
                strokeWidth="4"
                className="fill-water stroke-paper [paint-order:stroke]"
              >
                {word}
              </text>
            </svg>
          )}
        </PlotReader>
      </div>
    </PlotFrame>
  )
}
