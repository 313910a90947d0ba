'use client'
import type { AmountDisplay } from '@almanac/units/display'
import { type KeyboardEvent, type PointerEvent, useState } from 'react'
import { fitMap, type MapPlace, spreadLabels } from './map-layout.ts'
import { ScaleBar, YardSign } from './map-signs.tsx'
import { useWidth } from './use-width.ts'

export type PinMapProps = {
  /** What the pin stands for: "Orchard Lane 14". */
  name: string
  /** Null while nobody has set it: it then waits in the middle of what is known. */
  pin: MapPlace | null
  yard: MapPlace | null
  /** Places that are known, to go by. */
  landmarks: readonly { id: string; label: string; place: MapPlace }[]
  display: AmountDisplay
  onMove: (place: MapPlace) => void
}

const HEIGHTS = { least: 220, most: 320 }
const MARGIN = 40
/** Pixels for one press of an arrow key, and with Shift. */
const [STEP, FAR] = [2, 20]
const ARROWS: Record<string, readonly [number, number]> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }
/** Landmarks the sheet is fitted to, the nearest: a yard far away would draw the street as a dot. */
const FITTED = 8
/** Names on the sheet; more would lie on each other. The other landmarks stay dots. */
const NAMED = 4

/**
 * A pin to be set by hand among known places, north up and to scale: by a press on the sheet, by dragging, or by the arrow keys. Needs no map server and so
 * no network. The sheet stays as it was while the pin moves.
 */
export function PinMap({ name, pin, yard, landmarks, display, onMove }: PinMapProps) {
  const [ref, width, fontSize] = useWidth<HTMLDivElement>(480)
  const [first] = useState(pin)
  const near = [...landmarks.slice(0, FITTED).map((one) => one.place), ...(first ? [first] : [])]
  const known = near.length > 0 || !yard ? near : [yard]
  if (known.length === 0) return <p className="text-soft">No place is on record yet to start from. Type the first coordinates.</p>
  const map = fitMap(known, width, HEIGHTS, MARGIN)
  const middle = { x: width / 2, y: map.height / 2 }
  const at = pin ? map.at(pin) : middle
  const labelYs = spreadLabels(
    landmarks.slice(0, NAMED).map(({ place }) => ({ x: map.at(place).x, y: map.at(place).y + 4 })),
    150,
    fontSize * 1.1,
  )
  const clamp = (value: number, most: number) => Math.min(most - 4, Math.max(4, value))
  const moveTo = (x: number, y: number) => onMove(map.placeAt({ x: clamp(x, width), y: clamp(y, map.height) }))

  const byPointer = (event: PointerEvent<HTMLButtonElement>) => {
    if (event.type === 'pointerdown') event.currentTarget.setPointerCapture(event.pointerId)
    else if (!event.currentTarget.hasPointerCapture(event.pointerId)) return
    const box = event.currentTarget.getBoundingClientRect()
    moveTo(event.clientX - box.left, event.clientY - box.top)
  }
  const byKey = (event: KeyboardEvent) => {
    const way = ARROWS[event.key]
    if (!way) return
    event.preventDefault()
    const step = event.shiftKey ? FAR : STEP
    moveTo(at.x + way[0] * step, at.y + way[1] * step)
  }
  const where = pin ? `${pin.latitude} north, ${pin.longitude} east` : 'not set'
  return (
    <div ref={ref} className="border border-line bg-sheet">
      <button
        type="button"
        aria-label={`Pin of ${name}: ${where}. Arrow keys move it, with Shift further.`}
        className="block cursor-crosshair touch-none"
        onPointerDown={byPointer}
        onPointerMove={byPointer}
        onKeyDown={byKey}
      >
        <svg aria-hidden="true" width={width} height={map.height} className="pointer-events-none block max-w-full text-small">
          {landmarks.map(({ id, label, place }, n) => {
            const { x, y } = map.at(place)
            return (
              <g key={id}>
                <circle cx={x} cy={y} r={3.5} className="fill-gravel" />
                {n < NAMED ? (
                  <text
                    x={x > width * 0.6 ? x - 7 : x + 7}
                    y={labelYs[n]}
                    textAnchor={x > width * 0.6 ? 'end' : 'start'}
                    className="fill-soft stroke-sheet [paint-order:stroke]"
                    strokeWidth="3"
                  >
                    {label}
                  </text>
                ) : null}
              </g>
            )
          })}
          {yard ? <YardSign {...map.at(yard)} /> : null}
          <g transform={`translate(${at.x} ${at.y})`} className={pin ? '' : 'opacity-50'}>
            <path d="M0 0 C-9 -12 -9 -24 0 -24 C9 -24 9 -12 0 0 z" className="fill-water stroke-sheet" strokeWidth="1.5" />
            <circle cy={-16} r={3} className="fill-sheet" />
          </g>
          <ScaleBar map={map} mostPixels={120} display={display} />
        </svg>
      </button>
    </div>
  )
}
