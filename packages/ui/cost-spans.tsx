'use client'
import type { Spread } from '@almanac/softener/choice/spread'
import { LegendItem, PlotFrame } from './plot-frame.tsx'
import { SpanAxis } from './span-axis.tsx'
import { useWidth } from './use-width.ts'

/** One option: its costs a year in minor units, null without a price; how often it is cheapest, in words; the prices it lacks. */
export type CostRow = { name: string; spread: Spread | null; cheapest: string; missing: readonly string[]; best: boolean }

export type CostSpansProps = {
  title: string
  rows: readonly CostRow[]
  /** Minor units as rounded money: "$64". */
  money: (minor: number) => string
}

const ROW = 46
const TOP = 4
const AXIS = 24

/** Cost a year of each option: the bar reaches from one case in ten to nine in ten, the stroke is the middle. The same figures stand in its table. */
export function CostSpans({ title, rows, money }: CostSpansProps) {
  const [ref, width] = useWidth<HTMLDivElement>(560)
  const priced = rows.filter((row) => row.spread !== null)
  const table = {
    heads: ['', '1 in 10 below', 'middle', '9 in 10 below', 'on average', 'cheapest'],
    rows: rows.map(({ name, spread, cheapest }) =>
      spread
        ? [name, ...[spread.low, spread.middle, spread.high, spread.mean].map(money), cheapest]
        : [name, '', '', '', 'a price is missing', ''],
    ),
  }
  if (priced.length === 0) return <Missing rows={rows} />
  const most = Math.max(...priced.map((row) => row.spread?.high ?? 0), 1)
  const x = (minor: number) => 2 + ((width - 26) * minor) / (most * 1.05)
  const height = TOP + rows.length * ROW + AXIS
  const legend = (
    <>
      <LegendItem sign={<rect x="1" y="3" width="20" height="6" className="fill-water" opacity=".3" />}>
        one case in ten to nine in ten
      </LegendItem>
      <LegendItem sign={<path d="M11 0 V12" className="stroke-water" strokeWidth="3" />}>middle</LegendItem>
    </>
  )
  return (
    <PlotFrame title={title} legend={legend} table={table}>
      <div ref={ref}>
        <svg
          role="img"
          aria-label={`${title}: ${rows.map((row) => rowWords(row, money)).join('; ')}`}
          width={width}
          height={height}
          className="block max-w-full"
        >
          <SpanAxis {...{ most, width, height, x }} top={TOP} foot={AXIS} label={money} />
          {rows.map((row, i) => (
            <Bar key={row.name} row={row} top={TOP + i * ROW} x={x} money={money} />
          ))}
        </svg>
      </div>
      <Missing rows={rows} />
    </PlotFrame>
  )
}

function rowWords({ name, spread }: CostRow, money: CostSpansProps['money']): string {
  return spread ? `${name} ${money(spread.low)} to ${money(spread.high)} a year, middle ${money(spread.middle)}` : `${name} without a price`
}

function Bar({ row, top, x, money }: { row: CostRow; top: number; x: (minor: number) => number; money: CostSpansProps['money'] }) {
  const { spread } = row
  const bar = top + 22
  return (
    <g>
      <text x={x(0)} y={top + 16} className={`fill-ink ${row.best ? 'font-semibold' : ''}`}>
        {row.name}
        {spread ? (
          <tspan className="fill-soft font-normal">{`  about ${money(spread.middle)} a year`}</tspan>
        ) : (
          <tspan className="fill-soft font-normal"> no price yet</tspan>
        )}
      </text>
      {spread ? (
        <>
          <rect
            x={x(spread.low)}
            y={bar}
            width={Math.max(2, x(spread.high) - x(spread.low))}
            height={10}
            className="fill-water"
            opacity={row.best ? 0.5 : 0.28}
          />
          <path d={`M${x(spread.middle)} ${bar - 3} v16`} className="stroke-water" strokeWidth="3" />
        </>
      ) : null}
    </g>
  )
}

/** What has no price, each named once with where to enter it. */
function Missing({ rows }: { rows: readonly CostRow[] }) {
  const missing = [...new Set(rows.flatMap((row) => row.missing))]
  if (missing.length === 0) return null
  return <p className="mt-2 text-bead-ink">Price not set: {missing.join('; ')}.</p>
}
