import type { AmountDisplay } from '@almanac/units/display'
import { KM_PER_MILE } from '@almanac/units/distance'
import { type MapFrame, scaleBar } from './map-layout.ts'

/** The yard where crews start, at a point of the sheet. */
export function YardSign({ x, y }: { x: number; y: number }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <path d="M-8 8 V-3 L0 -10 L8 -3 V8 z" className="fill-paper stroke-ink" strokeWidth="1.5" />
      <text y={24} textAnchor="middle" className="fill-soft">
        yard
      </text>
    </g>
  )
}

/** A round length at the foot of the sheet, in miles or kilometres. */
export function ScaleBar({ map, mostPixels, display }: { map: MapFrame; mostPixels: number; display: AmountDisplay }) {
  const bar = scaleBar(map.milesPerPixel, Math.min(mostPixels, map.width / 3), display.unitSystem === 'us' ? 1 : 1 / KM_PER_MILE)
  return (
    <g transform={`translate(14 ${map.height - 14})`} className="stroke-ink">
      <path d={`M0 -5 V0 H${bar.pixels} V-5`} className="fill-none" />
      <text x={bar.pixels + 7} y={1} className="fill-soft stroke-none">
        {bar.length} {display.unitSystem === 'us' ? 'mi' : 'km'}
      </text>
    </g>
  )
}
