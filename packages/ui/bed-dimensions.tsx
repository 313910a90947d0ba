import type { PlacedLabel } from './bed-layout.ts'

const lineColours: Partial<Record<PlacedLabel['role'], string>> = {
  expansion: 'stroke-water',
  spare: 'stroke-soft',
  cut: 'stroke-danger',
}
const textColours: Partial<Record<PlacedLabel['role'], string>> = { expansion: 'fill-water', spare: 'fill-soft', cut: 'fill-danger' }

/** An upright dimension line with ticks at its ends and hairlines from the edge it measures. All in pixels. */
export function DimensionLine({
  x,
  top,
  bottom,
  edge,
  role,
}: {
  x: number
  top: number
  bottom: number
  edge: number
  role?: PlacedLabel['role']
}) {
  const away = Math.sign(x - edge)
  return (
    <>
      <path d={`M${edge + 5 * away} ${top} H${x} M${edge + 5 * away} ${bottom} H${x}`} className="fill-none stroke-line" />
      <path
        d={`M${x} ${top} V${bottom} M${x - 4} ${top} h8 M${x - 4} ${bottom} h8`}
        className={`fill-none ${(role && lineColours[role]) ?? 'stroke-ink'}`}
      />
    </>
  )
}

/** A text of the right column; a leader joins it to its line when it had to move, and always to the mark on the tube. */
export function BedLabel({ label, textX, lineX, fontSize }: { label: PlacedLabel; textX: number; lineX: number; fontSize: number }) {
  const { role, anchor, middle } = label
  const top = middle - label.height / 2
  const lineHeight = fontSize * 1.28
  const small = lineHeight * 0.89
  const moved = Math.abs(anchor.y - middle) > 4
  const leader =
    role === 'cut'
      ? `M${anchor.x + 4} ${anchor.y} H${lineX - 8} L${textX - 4} ${middle}`
      : moved
        ? `M${anchor.x} ${anchor.y} L${textX - 4} ${middle}`
        : null
  return (
    <>
      {leader ? <path d={leader} className={`fill-none ${lineColours[role] ?? 'stroke-ink'}`} /> : null}
      <text className={textColours[role] ?? 'fill-ink'}>
        {label.label.map((line, i) => (
          <tspan key={line} x={textX} y={top + lineHeight * (i + 0.78)}>
            {line}
          </tspan>
        ))}
        {label.detail.map((line, i) => (
          <tspan key={line} x={textX} y={top + lineHeight * label.label.length + small * (i + 0.78)} className="fill-soft text-small">
            {line}
          </tspan>
        ))}
      </text>
    </>
  )
}
