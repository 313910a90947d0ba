import type { BedDrawing, DrawnShape, ShapeRole } from '@almanac/softener/drawing/drawing-types'
import { svgPath } from '@almanac/softener/drawing/svg-path'
import { ClipPath, Defs, G, Path, Svg } from '@react-pdf/renderer'
import { INK } from '../print/printed.tsx'
import { FigureDimensions } from './figure-dimensions.tsx'
import { figureScale } from './figure-scale.ts'
import { boxOf, marksOver } from './material-marks.ts'

/** Room for the figure and its texts, points. */
export const FIGURE = { width: 318, height: 440, left: 34, top: 10, bottom: 22, tankWidth: 130 } as const

type Room = { width: number; height: number; left: number; top: number; bottom: number; tankWidth: number }

/** The scale the figure is drawn at: 1 : n. */
export function scaleOf({ bounds }: BedDrawing, { height, top, bottom, tankWidth }: Room = FIGURE) {
  return figureScale(bounds.maxX - bounds.minX, bounds.maxY - bounds.minY, tankWidth, height - top - bottom)
}

/** The bed drawn to scale in black: materials are known by their marks, not by a colour. `bare` leaves its dimensions out. */
export function BedFigure({ drawing, room = FIGURE, bare = false }: { drawing: BedDrawing; room?: Room; bare?: boolean }) {
  const { bounds } = drawing
  const { pointsPerIn } = scaleOf(drawing, room)
  const origin = { x: room.left - bounds.minX * pointsPerIn, y: room.height - room.bottom }
  return (
    <Svg width={room.width} height={room.height} viewBox={`0 0 ${room.width} ${room.height}`}>
      <Defs>
        {drawing.shapes.map((shape) =>
          MARKED.has(shape.role) ? (
            <ClipPath key={shape.role} id={shape.role}>
              <Path d={svgPath(shape.path)} />
            </ClipPath>
          ) : null,
        )}
      </Defs>
      <G transform={`translate(${origin.x}, ${origin.y}) scale(${pointsPerIn})`}>
        {drawing.shapes.map((shape, i) => (
          <Shape key={`${shape.role}-${i}`} shape={shape} pointsPerIn={pointsPerIn} />
        ))}
      </G>
      {bare ? null : <FigureDimensions drawing={drawing} pointsPerIn={pointsPerIn} origin={origin} />}
    </Svg>
  )
}

/** Materials, each known by its marks. */
const MARKED: ReadonlySet<ShapeRole> = new Set<ShapeRole>(['gravel', 'bed', 'expanded-bed'])
const FILLS: Partial<Record<ShapeRole, string>> = { gravel: '#cfcfcf', bed: '#e6e6e6' }
const STROKES: Partial<Record<ShapeRole, number>> = { shell: 1.4, valve: 1.2, 'cut-mark': 1.4, tube: 0.9, basket: 0.9 }

function Shape({ shape, pointsPerIn }: { shape: DrawnShape; pointsPerIn: number }) {
  const d = svgPath(shape.path)
  const line = (points: number) => points / pointsPerIn
  if (shape.paint !== 'fill') {
    return (
      <Path
        d={d}
        fill={shape.paint === 'stroke' ? 'none' : '#ffffff'}
        stroke={INK}
        strokeWidth={line(STROKES[shape.role] ?? 0.7)}
        strokeDasharray={shape.role === 'cut-mark' ? `${line(4)} ${line(2)}` : undefined}
      />
    )
  }
  const fill = FILLS[shape.role]
  const marks = marksOf(shape, pointsPerIn)
  return (
    <>
      {fill ? <Path d={d} fill={fill} /> : null}
      {marks ? (
        <G clipPath={`url(#${shape.role})`}>
          {shape.role === 'gravel' ? <Path d={marks} fill="none" stroke={INK} strokeWidth={line(0.5)} /> : <Path d={marks} fill={INK} />}
        </G>
      ) : null}
      {shape.role === 'expanded-bed' ? (
        <Path d={d} fill="none" stroke={INK} strokeWidth={line(0.6)} strokeDasharray={`${line(2)} ${line(2)}`} />
      ) : null}
    </>
  )
}

function marksOf(shape: DrawnShape, pointsPerIn: number): string | null {
  const inches = (points: number) => points / pointsPerIn
  const box = boxOf(shape.path)
  if (shape.role === 'bed') return marksOver(box, inches(5), inches(0.5), 'square')
  if (shape.role === 'expanded-bed') return marksOver(box, inches(10), inches(0.5), 'square')
  if (shape.role === 'gravel') return marksOver(box, inches(6), inches(2.2), 'stone')
  return null
}
