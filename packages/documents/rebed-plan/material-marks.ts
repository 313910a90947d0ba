import type { PathCommand } from '@almanac/softener/drawing/drawing-types'

type Box = { minX: number; maxX: number; minY: number; maxY: number }

/** Box around a path's points, y upwards as drawn. */
export function boxOf(path: readonly PathCommand[]): Box {
  const points = path.filter((step) => step.kind !== 'close')
  const xs = points.map((step) => step.x)
  const ys = points.map((step) => step.y)
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) }
}

const show = (value: number) => String(Math.round(value * 1000) / 1000)

/** At most so many marks in one material, so that a wide tank prints as fast as a narrow one. */
const MOST_MARKS = 700

/** Staggered marks over a box as one path, y downwards as in SVG: `square` for beads, `stone` for gravel. `sizeIn` is half a mark's width. */
export function marksOver(box: Box, spacingIn: number, sizeIn: number, kind: 'square' | 'stone'): string {
  const area = Math.max(0, box.maxX - box.minX) * Math.max(0, box.maxY - box.minY)
  const step = Math.max(spacingIn, Math.sqrt(area / MOST_MARKS))
  const marks: string[] = []
  let row = 0
  for (let y = box.minY + step / 2; y < box.maxY + step; y += step, row += 1) {
    for (let x = box.minX + (row % 2 === 0 ? step / 2 : step); x < box.maxX + step; x += step) {
      marks.push(kind === 'square' ? squareAt(x, -y, sizeIn) : stoneAt(x, -y, sizeIn))
    }
  }
  return marks.join(' ')
}

const squareAt = (x: number, y: number, r: number) => `M${show(x - r)} ${show(y - r)} h${show(2 * r)} v${show(2 * r)} h${show(-2 * r)} z`

/** A flat hexagon. */
const stoneAt = (x: number, y: number, r: number) =>
  `M${show(x - r)} ${show(y)} L${show(x - r / 2)} ${show(y - 0.7 * r)} L${show(x + r / 2)} ${show(y - 0.7 * r)} L${show(x + r)} ${show(y)} L${show(x + r / 2)} ${show(y + 0.7 * r)} L${show(x - r / 2)} ${show(y + 0.7 * r)} Z`
