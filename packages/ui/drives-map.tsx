'use client'
import type { AmountDisplay } from '@almanac/units/display'
import { fitMap, type MapPlace, spreadLabels } from './map-layout.ts'
import { ScaleBar, YardSign } from './map-signs.tsx'
import { PlotFrame } from './plot-frame.tsx'
import { useWidth } from './use-width.ts'

/** One stop of a drive; `about` when its place is only roughly known. */
export type MapStop = { key: string; label: string; detail: string; place: MapPlace & { about: boolean } }

export type DrivesMapProps = {
  title: string
  stops: readonly MapStop[]
  yard: MapPlace | null
  display: AmountDisplay
  /** Stops whose place nobody knows: named under the map. */
  unknown: readonly string[]
}

const MARGIN = 46
const R = 11

/**
 * The day's drives on a plain sheet: stops in their order, straight lines between them, a scale bar, north up. It needs no map server and so works
 * without a network; the roads themselves are not drawn.
 */
export function DrivesMap({ title, stops, yard, display, unknown }: DrivesMapProps) {
  const [ref, width, fontSize] = useWidth<HTMLDivElement>(720)
  const places = [...stops.map((stop) => stop.place), ...(yard ? [yard] : [])]
  if (stops.length === 0) return <p className="text-soft">No stop on this day has a known place.</p>
  const map = fitMap(places, width, { least: 220, most: 460 }, MARGIN)
  const home = yard ? map.at(yard) : null
  const points = stops.map((stop) => map.at(stop.place))
  const way = [...(home ? [home] : []), ...points, ...(home ? [home] : [])]
  const labelYs = spreadLabels(
    points.map(({ x, y }) => ({ x, y: y + 4.5 })),
    Math.min(170, width * 0.4),
    fontSize * 1.2,
  )
  return (
    <PlotFrame
      title={title}
      table={{ heads: ['Stop', 'Where', 'When'], rows: stops.map((stop, n) => [`${n + 1}`, stop.label, stop.detail]) }}
      legend={
        <>
          <span>Straight lines, not roads.</span>
          {stops.some((stop) => stop.place.about) ? <span>Dashed: known by postcode only.</span> : null}
          {unknown.length > 0 ? <span>Place unknown: {unknown.join(', ')}.</span> : null}
        </>
      }
    >
      <div ref={ref} className="border border-line bg-sheet">
        <svg aria-hidden="true" width={width} height={map.height} className="block max-w-full text-small">
          <polyline points={way.map(({ x, y }) => `${x},${y}`).join(' ')} className="fill-none stroke-water" strokeWidth="1.5" />
          {home ? <YardSign {...home} /> : null}
          {stops.map((stop, n) => {
            const { x, y } = points[n] ?? { x: 0, y: 0 }
            const left = x > width * 0.62
            return (
              <g key={stop.key}>
                <circle
                  cx={x}
                  cy={y}
                  r={R}
                  className="fill-paper stroke-ink"
                  strokeWidth="1.5"
                  strokeDasharray={stop.place.about ? '3 2' : undefined}
                />
                <text x={x} y={y + 4.5} textAnchor="middle" className="fill-ink font-semibold">
                  {n + 1}
                </text>
                <text
                  x={left ? x - R - 5 : x + R + 5}
                  y={labelYs[n]}
                  textAnchor={left ? 'end' : 'start'}
                  strokeWidth="4"
                  className="fill-ink stroke-sheet [paint-order:stroke]"
                >
                  {stop.label}
                </text>
              </g>
            )
          })}
          <ScaleBar map={map} mostPixels={140} display={display} />
          <g transform={`translate(${width - 20} 24)`}>
            <path d="M0 -12 L5 6 L0 2 L-5 6 z" className="fill-soft" />
            <text y={20} textAnchor="middle" className="fill-soft">
              N
            </text>
          </g>
        </svg>
      </div>
    </PlotFrame>
  )
}
