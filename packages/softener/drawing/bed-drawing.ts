import { ok, type Result } from '@almanac/units/result'
import { bedDimensions } from './bed-dimensions.ts'
import { bedShapes, boundsOf, tankShapes, tubeShapes } from './bed-shapes.ts'
import { describeDrawing } from './describe-drawing.ts'
import type { BedDrawing, BedDrawingInput } from './drawing-types.ts'
import { drawnBed } from './drawn-bed.ts'

/**
 * The tank and its bed to scale, with dimensions: shapes in inches (see `Point` for the axes), labels in the reader's units. Needs the
 * tank's diameter and height; whatever else is unknown is assumed and said so. Refuses impossible sizes.
 */
export function drawBed(input: BedDrawingInput): Result<BedDrawing> {
  const drawn = drawnBed(input)
  if (!drawn.ok) return drawn
  const bed = drawn.value
  const shapes = [...bedShapes(bed), ...tankShapes(bed), ...tubeShapes(bed)]
  const { dimensions, callouts } = bedDimensions(bed)
  const value = { shapes, dimensions, callouts, bounds: boundsOf(shapes), description: describeDrawing(bed), warnings: bed.warnings }
  return ok(value, drawn)
}
