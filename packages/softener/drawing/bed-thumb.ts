import { ok, type Result, refuse } from '@almanac/units/result'
import { bedShapes, boundsOf, tankShapes } from './bed-shapes.ts'
import { describeDrawing } from './describe-drawing.ts'
import type { BedDrawing, BedDrawingInput, DrawnShape } from './drawing-types.ts'
import { drawnBed } from './drawn-bed.ts'

/** A tank and its bed as `drawBed` draws them, without dimensions, tube details or backwash, for lists. */
export function drawBedThumb(input: BedDrawingInput): Result<{ shapes: DrawnShape[]; bounds: BedDrawing['bounds']; description: string }> {
  const drawn = drawnBed({ ...input, backwashGpm: null })
  if (!drawn.ok) return refuse(drawn.reason)
  const bed = { ...drawn.value, expansion: null }
  const shapes = [...bedShapes(bed), ...tankShapes(bed)]
  return ok({ shapes, bounds: boundsOf(shapes), description: describeDrawing(bed) }, drawn)
}
