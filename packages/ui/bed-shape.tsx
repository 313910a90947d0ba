import type { DrawnShape, ShapeRole } from '@almanac/softener/drawing/drawing-types'
import { svgPath } from '@almanac/softener/drawing/svg-path'

const fills: Partial<Record<ShapeRole, { className: string; opacity: number; pattern?: 'beads' | 'loose' | 'stones' }>> = {
  gravel: { className: 'fill-gravel', opacity: 0.55, pattern: 'stones' },
  bed: { className: 'fill-bead', opacity: 0.6, pattern: 'beads' },
  'expanded-bed': { className: 'fill-bead', opacity: 0.14, pattern: 'loose' },
  freeboard: { className: 'fill-water', opacity: 0.1 },
}

const strokes: Partial<Record<ShapeRole, number>> = { shell: 2, valve: 2, 'cut-mark': 1.5 }

/** One shape of the drawing, in inches; what it stands for decides ground, pattern and line. `patternId` prefixes the sheet's patterns. */
export function BedShape({ shape, patternId }: { shape: DrawnShape; patternId?: string }) {
  const d = svgPath(shape.path)
  const fill = fills[shape.role]
  if (shape.paint === 'fill' && fill)
    return (
      <>
        <path d={d} className={fill.className} opacity={fill.opacity} />
        {patternId && fill.pattern ? <path d={d} fill={`url(#${patternId}-${fill.pattern})`} /> : null}
      </>
    )
  const cut = shape.role === 'cut-mark'
  return (
    <path
      d={d}
      className={`${shape.paint === 'stroke' ? 'fill-none' : 'fill-paper'} ${cut ? 'stroke-danger' : 'stroke-ink'}`}
      strokeWidth={strokes[shape.role] ?? 1}
      strokeDasharray={cut ? '5 3' : undefined}
      strokeLinejoin="round"
      vectorEffect="non-scaling-stroke"
    />
  )
}

/** Patterns of the materials, in inches: beads, beads lifted apart by backwash, and stones. A material is known by its pattern too. */
export function BedPatterns({ id }: { id: string }) {
  return (
    <defs>
      <pattern id={`${id}-beads`} width="0.8" height="0.8" patternUnits="userSpaceOnUse">
        <circle cx="0.2" cy="0.2" r="0.09" className="fill-ink" opacity="0.28" />
        <circle cx="0.6" cy="0.6" r="0.09" className="fill-ink" opacity="0.28" />
      </pattern>
      <pattern id={`${id}-loose`} width="1.6" height="1.6" patternUnits="userSpaceOnUse">
        <circle cx="0.4" cy="0.4" r="0.1" className="fill-bead-ink" opacity="0.6" />
        <circle cx="1.2" cy="1.2" r="0.1" className="fill-bead-ink" opacity="0.6" />
      </pattern>
      <pattern id={`${id}-stones`} width="1" height="0.9" patternUnits="userSpaceOnUse">
        <ellipse cx="0.28" cy="0.25" rx="0.2" ry="0.15" className="fill-none stroke-ink" strokeWidth="0.06" opacity="0.6" />
        <ellipse cx="0.75" cy="0.68" rx="0.2" ry="0.15" className="fill-none stroke-ink" strokeWidth="0.06" opacity="0.6" />
      </pattern>
    </defs>
  )
}
