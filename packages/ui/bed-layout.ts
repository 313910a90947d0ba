import type { BedDrawing, DimensionRole } from '@almanac/softener/drawing/drawing-types'
import { layoutLabels } from './label-layout.ts'
import { wrapWords } from './wrap-words.ts'

/** A text beside the drawing, in pixels: its lines, its middle, and the point of the drawing it belongs to. */
export type PlacedLabel = {
  role: DimensionRole | 'cut'
  label: string[]
  detail: string[]
  middle: number
  height: number
  anchor: { x: number; y: number }
}

/** Where everything of a bed drawing stands, in pixels from the top left. `scale` is pixels per inch, the same both ways. */
export type BedLayout = {
  scale: number
  /** Pixel of the drawing's origin: the tank's axis on the floor. */
  origin: { x: number; y: number }
  height: number
  dimensionX: { left: number; right: number }
  /** Ends of the dimension lines along the right side. */
  rightLines: { role: DimensionRole; top: number; bottom: number; edge: number }[]
  textX: number
  labels: PlacedLabel[]
}

const lineRoom = 1.28
/** Mean width of a letter of the typeface, as a share of its size, on the safe side. */
const letter = 0.52
const detailSize = 0.89

/**
 * Fits a bed drawing into `width` × about `height` pixels. All texts stand in one column at the right and never overlap; when they need
 * more height than the tank, the drawing grows.
 */
export function layoutBed(drawing: BedDrawing, width: number, height: number, fontSize: number): BedLayout {
  const { bounds, dimensions, callouts } = drawing
  const narrow = width < 520
  const tallIn = bounds.maxY - bounds.minY
  const wideIn = bounds.maxX - bounds.minX
  const leftRoom = fontSize * 1.6 + (narrow ? 22 : 38)
  const gap = narrow ? 20 : 40
  const textGap = 14
  const topRoom = fontSize
  const bottomRoom = fontSize * 2.6 + 10
  const leastText = Math.min(220, width * 0.42)
  const scale = Math.min((height - topRoom - bottomRoom) / tallIn, (width - leftRoom - gap - textGap - leastText) / wideIn)
  const textX = leftRoom + wideIn * scale + gap + textGap
  const letters = (size: number) => Math.max(8, Math.floor(Math.min(340, width - textX) / (size * letter)))

  const origin = { x: leftRoom - bounds.minX * scale, y: topRoom + bounds.maxY * scale }
  const yOf = (inches: number) => origin.y - inches * scale
  const dimensionX = { left: leftRoom - (narrow ? 12 : 24), right: textX - textGap }

  const right = dimensions.filter((d) => d.side === 'right')
  const rightLines = right.map((d) => {
    const [a, b] = [yOf(d.from.y), yOf(d.to.y)]
    return { role: d.role, top: Math.min(a, b), bottom: Math.max(a, b), edge: origin.x + Math.max(d.from.x, d.to.x) * scale }
  })
  const wanted = [
    ...right.map((d) => ({ role: d.role, d, anchor: { x: dimensionX.right, y: yOf((d.from.y + d.to.y) / 2) } })),
    ...callouts.map((c) => ({ role: 'cut' as const, d: c, anchor: { x: origin.x + Math.abs(c.at.x) * scale, y: yOf(c.at.y) } })),
  ].map(({ role, d, anchor }) => {
    const label = wrapWords(d.label, letters(fontSize))
    const detail = d.detail ? wrapWords(d.detail, letters(fontSize * detailSize)) : []
    return { role, label, detail, anchor, height: (label.length + detail.length * detailSize) * fontSize * lineRoom }
  })
  const middles = layoutLabels(
    wanted.map((w) => ({ at: w.anchor.y, size: w.height })),
    fontSize * 0.4,
    2,
    Math.max(height, origin.y),
  )
  const labels = wanted.map((w, i) => ({ ...w, middle: middles[i] ?? w.anchor.y }))
  const lowest = Math.max(origin.y + bottomRoom, ...labels.map((l) => l.middle + l.height / 2 + 4))
  return { scale, origin, height: Math.ceil(lowest), dimensionX, rightLines, textX, labels }
}
