import type { ResinKindId } from '@almanac/records/resin-kind'
import type { FirmFigures } from '../firm/firm-figures.ts'
import type { ExpansionModel } from '../hydraulics/bed-expansion.ts'
import type { Speaking } from '../kit/speaking.ts'

/**
 * Coordinates are inches, true to scale: x = 0 on the tank's axis, y = 0 on the floor the tank stands on, y upwards. A renderer flips y
 * (`svgPath` does). No colour and no text size is given here.
 */
export type Point = { x: number; y: number }

/** One step of a path. An arc is part of an ellipse with axes parallel to x and y, never more than a quarter; `turn` is as seen with y up. */
export type PathCommand =
  | { kind: 'move'; x: number; y: number }
  | { kind: 'line'; x: number; y: number }
  | { kind: 'arc'; x: number; y: number; radiusXIn: number; radiusYIn: number; turn: 'clockwise' | 'anticlockwise' }
  | { kind: 'close' }

export type ShapeRole =
  | 'foot'
  | 'shell'
  | 'neck'
  | 'gravel'
  | 'bed'
  | 'expanded-bed'
  | 'freeboard'
  | 'tube'
  | 'basket'
  | 'valve'
  | 'cut-mark'

/** Draw shapes in the order given: fills first, outlines over them. `stroke` shapes are lines without a fill. */
export type DrawnShape = { role: ShapeRole; paint: 'fill' | 'stroke' | 'fill-and-stroke'; path: PathCommand[] }

export type DimensionRole = 'tank-height' | 'tank-diameter' | 'gravel' | 'bed' | 'expansion' | 'spare' | 'tube'

/**
 * A dimension line from one point of the tank to another, to be drawn beside it. `label` is the main text, `detail` the smaller second
 * line; `labelAtIn` is where the label stands along the line (y for left and right, x for bottom), moved apart so that texts do not collide.
 */
export type DrawnDimension = {
  role: DimensionRole
  side: 'left' | 'right' | 'bottom'
  from: Point
  to: Point
  label: string
  detail: string | null
  labelAtIn: number
}

/** A note tied to a point, such as where to cut the tube. */
export type Callout = { role: 'tube'; at: Point; label: string; detail: string | null }

export type BedDrawing = {
  shapes: DrawnShape[]
  dimensions: DrawnDimension[]
  callouts: Callout[]
  /** Smallest box around all shapes; leave room outside it for dimension lines and texts. */
  bounds: { minX: number; minY: number; maxX: number; maxY: number }
  /** The whole drawing in one sentence, for people who do not see it. */
  description: string
  /** What the technician should look at twice, for instance a bed that would rise into the valve. */
  warnings: string[]
}

/** What is known of a tank and its bed; null or left out where it is not. A gravel weight of 0 means that there is none. */
export type BedDrawingInput = Speaking & {
  diameterIn: number | null
  heightIn: number | null
  resinVolumeFt3?: number | null
  nominalGrains?: number | null
  resinKind?: ResinKindId | null
  gravelLb?: number | null
  tubeOutsideDiameterIn?: number | null
  oldTubeLengthIn?: number | null
  backwashGpm?: number | null
  waterTemperatureF?: number | null
  expansionModel?: ExpansionModel
  /** The firm's own tank table; the usual one where not given. */
  figures?: Pick<FirmFigures, 'tanks'> | null
}
