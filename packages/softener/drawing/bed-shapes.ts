import type { BedDrawing, DrawnShape, PathCommand } from './drawing-types.ts'
import type { DrawnBed } from './drawn-bed.ts'
import { boxPath, linePath, regionPath } from './shell-paths.ts'

/** Gravel, settled bed, room the bed rises into, and what stays free above, from the bottom up; parts that are not there are left out. */
export function bedShapes(bed: DrawnBed): DrawnShape[] {
  const { shell, levels, expansion } = bed
  const risesTo = expansion ? Math.max(levels.bedTopIn, expansion.topIn) : levels.bedTopIn
  return [
    fill('gravel', regionPath(shell, shell.bottomIn, levels.gravelTopIn)),
    fill('bed', regionPath(shell, levels.gravelTopIn, levels.bedTopIn)),
    fill('expanded-bed', regionPath(shell, levels.bedTopIn, risesTo)),
    fill('freeboard', regionPath(shell, risesTo, shell.crownIn)),
  ].filter(drawn)
}

/** Foot, shell outline, neck and a stub of the valve. */
export function tankShapes({ shell }: DrawnBed): DrawnShape[] {
  const { diameterIn, heightIn, bottomIn, crownIn, headDepthIn } = shell
  const foot = diameterIn * 0.42
  const neck = neckHalfWidth(diameterIn)
  const valve = { half: neck * 1.7, height: Math.max(1.5, diameterIn * 0.18) }
  const footTop = bottomIn + headDepthIn * 0.55
  return [
    {
      role: 'foot',
      paint: 'stroke',
      path: [...linePath(-foot, 0, foot, 0), ...linePath(-foot, 0, -foot, footTop), ...linePath(foot, 0, foot, footTop)],
    },
    { role: 'shell', paint: 'stroke', path: regionPath(shell, bottomIn, crownIn) },
    { role: 'neck', paint: 'stroke', path: boxPath(-neck, crownIn - headDepthIn * 0.05, neck, heightIn) },
    { role: 'valve', paint: 'fill-and-stroke', path: boxPath(-valve.half, heightIn, valve.half, heightIn + valve.height) },
  ]
}

/** Distributor tube from its basket in the dimple to the cut, and the mark where it is cut. */
export function tubeShapes(bed: DrawnBed): DrawnShape[] {
  const { shell, tube, tubeOutsideDiameterIn } = bed
  const half = tubeOutsideDiameterIn / 2
  const basketTop = Math.min(shell.bottomIn + 4 * half, shell.bottomIn + (shell.crownIn - shell.bottomIn) / 4)
  const cutIn = cutHeightIn(bed)
  const mark = neckHalfWidth(shell.diameterIn) * 2.4
  return [
    { role: 'tube', paint: 'fill-and-stroke', path: boxPath(-half, basketTop, half, Math.max(basketTop, shell.bottomIn + tube.lengthIn)) },
    { role: 'basket', paint: 'fill-and-stroke', path: boxPath(-half * 1.8, shell.bottomIn, half * 1.8, basketTop) },
    { role: 'cut-mark', paint: 'stroke', path: linePath(-mark, cutIn, mark, cutIn) },
  ]
}

/** Height above the floor at which the tube is cut. */
export function cutHeightIn({ shell, tube }: DrawnBed): number {
  return shell.bottomIn + tube.lengthIn
}

function neckHalfWidth(diameterIn: number): number {
  return Math.min(diameterIn * 0.22, diameterIn >= 16 ? 2.2 : 1.4)
}

function fill(role: DrawnShape['role'], path: PathCommand[]): DrawnShape {
  return { role, paint: 'fill', path }
}

const drawn = (shape: DrawnShape): boolean => shape.path.length > 0

/** Box around all points of the shapes; arcs never bulge beyond their ends, since they are quarters of a dished end. */
export function boundsOf(shapes: readonly DrawnShape[]): BedDrawing['bounds'] {
  const bounds = { minX: 0, minY: 0, maxX: 0, maxY: 0 }
  for (const { path } of shapes) {
    for (const step of path) {
      if (step.kind === 'close') continue
      bounds.minX = Math.min(bounds.minX, step.x)
      bounds.maxX = Math.max(bounds.maxX, step.x)
      bounds.minY = Math.min(bounds.minY, step.y)
      bounds.maxY = Math.max(bounds.maxY, step.y)
    }
  }
  return bounds
}
