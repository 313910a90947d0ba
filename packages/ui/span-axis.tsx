import { roundTicks } from './round-ticks.ts'

type Props = {
  most: number
  width: number
  top: number
  height: number
  foot: number
  x: (value: number) => number
  label: (tick: number) => string
}

/** Upright lines at round values with their labels under them, for bars that lie. `foot` is the room for the labels. */
export function SpanAxis({ most, width, top, height, foot, x, label }: Props) {
  return roundTicks(most, width < 480 ? 3 : 6).map((tick) => (
    <g key={tick}>
      <path d={`M${x(tick)} ${top} V${height - foot}`} className="stroke-line" />
      <text x={x(tick)} y={height - 6} textAnchor={tick === 0 ? 'start' : 'middle'} className="fill-soft text-small">
        {label(tick)}
      </text>
    </g>
  ))
}
