import type { BedFacts, BedWater } from '@almanac/records/bed-facts'
import type { Result } from '@almanac/units/result'
import { cToF } from '@almanac/units/temperature'
import { drawBed } from '../drawing/bed-drawing.ts'
import type { BedDrawing } from '../drawing/drawing-types.ts'
import { kitInputOf, type RebedFirm } from './rebed-of-record.ts'
import { decidedTubeOdIn } from './site-bed-of-record.ts'

/** The tank and its bed to scale, with the tube as the kit brings it; refuses as the kit does. */
export function drawingOf(bed: BedFacts, water: Pick<BedWater, 'temperatureC'>, firm: RebedFirm): Result<BedDrawing> {
  const { valve: _valve, ...input } = kitInputOf(bed, firm)
  return drawBed({
    ...input,
    tubeOutsideDiameterIn: decidedTubeOdIn(bed, firm),
    backwashGpm: bed.backwashGpm,
    waterTemperatureF: water.temperatureC === null ? null : cToF(water.temperatureC),
  })
}
