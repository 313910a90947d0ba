import type { BedDrawing, DrawnShape } from '@almanac/softener/drawing/drawing-types'
import { BedShape } from './bed-shape.tsx'

export type BedThumbProps = {
  /** What `drawBedThumb` made; null where the tank's size is not known. */
  thumb: { shapes: readonly DrawnShape[]; bounds: BedDrawing['bounds']; description: string } | null
  /** Height in pixels of a 54 in tank; others stand to the same scale, so that a list shows which is larger. */
  height?: number
}

const usualTankIn = 54

/** A bed drawn small for lists. Its row says the same in words, so it is hidden from screen readers. */
export function BedThumb({ thumb, height = 54 }: BedThumbProps) {
  if (!thumb)
    return (
      <svg aria-hidden="true" width={height * 0.26} height={height} className="block">
        <rect x="1" y="2" width={height * 0.26 - 2} height={height - 4} rx="5" className="fill-none stroke-edge" strokeDasharray="3 3" />
      </svg>
    )
  const { minX, minY, maxX, maxY } = thumb.bounds
  const scale = Math.min(height / usualTankIn, (height * 1.3) / (maxY - minY))
  return (
    <svg
      aria-hidden="true"
      width={(maxX - minX) * scale + 3}
      height={(maxY - minY) * scale + 3}
      viewBox={`${minX - 1.5 / scale} ${-maxY - 1.5 / scale} ${maxX - minX + 3 / scale} ${maxY - minY + 3 / scale}`}
      className="block shrink-0 [&_path]:stroke-[1.25]"
    >
      {thumb.shapes
        .filter((s) => s.role !== 'foot')
        .map((shape, i) => (
          <BedShape key={`${shape.role}-${i}`} shape={shape} />
        ))}
    </svg>
  )
}
