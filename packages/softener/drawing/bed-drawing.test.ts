import { describe, expect, it } from 'vitest'
import { SPEAKING } from '../../../tests/support/speaking.ts'
import { drawBed } from './bed-drawing.ts'
import { drawBedThumb } from './bed-thumb.ts'
import type { BedDrawing, BedDrawingInput, DimensionRole } from './drawing-types.ts'
import { svgPath } from './svg-path.ts'

function draw(change: Partial<BedDrawingInput> = {}): BedDrawing {
  const known = {
    resinVolumeFt3: 1.5,
    gravelLb: 18,
    resinKind: 'gel-8',
    backwashGpm: 2.4,
    waterTemperatureF: 52,
    oldTubeLengthIn: 52.125,
  } as const
  const result = drawBed({ diameterIn: 10, heightIn: 54, ...SPEAKING, ...known, ...change })
  if (!result.ok) throw new Error(result.reason)
  return result.value
}
const line = (drawing: BedDrawing, role: DimensionRole) => drawing.dimensions.find((one) => one.role === role)
const length = (drawing: BedDrawing, role: DimensionRole) => {
  const found = line(drawing, role)
  return found ? Math.hypot(found.to.x - found.from.x, found.to.y - found.from.y) : Number.NaN
}

describe('true to scale', () => {
  it('a 10 × 54 with 1½ ft³ over 18 lb: 10 in wide, 54 high, a bed of 33.0 in (volume over area)', () => {
    const drawing = draw()
    expect(length(drawing, 'tank-diameter')).toBeCloseTo(10, 10)
    expect(length(drawing, 'tank-height')).toBeCloseTo(54, 10)
    expect(length(drawing, 'bed')).toBeCloseTo((1.5 / ((Math.PI * 25) / 144)) * 12, 3)
    expect(line(drawing, 'bed')).toMatchObject({ label: 'bed 33 in', detail: '1½ ft³, 8%, 77 lb wet' })
    expect(drawing.callouts[0]).toMatchObject({ label: 'cut tube here, 52⅛ in' })
  })
  it('gravel, bed, expansion and spare stand on each other without gap up to the crown', () => {
    const drawing = draw()
    const stack = (['gravel', 'bed', 'expansion', 'spare'] as const).map((role) => line(drawing, role))
    for (let at = 1; at < stack.length; at += 1) expect(stack[at]?.from.y).toBeCloseTo(stack[at - 1]?.to.y ?? Number.NaN, 10)
  })
  it('metric labels on the same shapes', () => {
    const metric = draw({ display: { locale: 'en-US', unitSystem: 'metric' } })
    expect(metric.shapes).toEqual(draw().shapes)
    expect(line(metric, 'bed')?.label).toBe('bed 83.8 cm')
    expect(line(metric, 'tank-height')?.label).toBe('tank 137.2 cm')
  })
  it('labels of two lines never stand on each other', () => {
    for (const size of [{}, { diameterIn: 6, heightIn: 13, resinVolumeFt3: 0.1, gravelLb: 1 }]) {
      const heights = draw(size)
        .dimensions.filter((one) => one.side === 'right')
        .map((one) => one.labelAtIn)
      const room = 0.07 * (size.heightIn ?? 54)
      for (let at = 1; at < heights.length; at += 1) expect((heights[at] ?? 0) - (heights[at - 1] ?? 0)).toBeGreaterThanOrEqual(room - 1e-9)
    }
  })
})

describe('what is not known or not there', () => {
  it('no gravel: no gravel shape and no gravel line', () => {
    const drawing = draw({ gravelLb: 0 })
    expect(drawing.shapes.map((shape) => shape.role)).not.toContain('gravel')
    expect(line(drawing, 'gravel')).toBeUndefined()
  })
  it('unknown fill is drawn as usual and says so', () => {
    const result = drawBed({ diameterIn: 10, heightIn: 54, ...SPEAKING })
    if (!result.ok) throw new Error(result.reason)
    expect(line(result.value, 'bed')?.detail).toMatch(/assumed, as usual for this tank/)
    expect(line(result.value, 'spare')?.detail).toBe('backwash rate not recorded')
    expect(result.missing).toContain('installed backwash rate')
    expect(result.value.callouts[0]?.label).toMatch(/about/)
  })
  it('warns when the bed would rise into the valve', () => {
    expect(draw({ backwashGpm: 5, waterTemperatureF: 40 }).warnings.join()).toMatch(/lost to the drain/)
    expect(draw().warnings).toEqual([])
  })
  it('refuses in a sentence without a size', () => {
    expect(drawBed({ diameterIn: null, heightIn: 54, ...SPEAKING })).toMatchObject({
      ok: false,
      reason: expect.stringContaining('measure'),
    })
    expect(drawBed({ diameterIn: 10, heightIn: 54, backwashGpm: -1, ...SPEAKING })).toMatchObject({
      ok: false,
    })
  })
})

describe('for lists', () => {
  it('has the same tank and bed, without tube, backwash or dimensions', () => {
    const thumb = drawBedThumb({
      diameterIn: 10,
      heightIn: 54,
      resinVolumeFt3: 1.5,
      gravelLb: 18,
      backwashGpm: 2.4,
      ...SPEAKING,
    })
    if (!thumb.ok) throw new Error(thumb.reason)
    const roles = thumb.value.shapes.map((shape) => shape.role)
    expect(roles).toContain('bed')
    for (const role of ['tube', 'basket', 'cut-mark', 'expanded-bed']) expect(roles).not.toContain(role)
  })
})

describe('svg path', () => {
  it('flips y and keeps the sense of an arc on the page', () => {
    const d = svgPath([
      { kind: 'move', x: 0, y: 1 },
      { kind: 'arc', x: 5, y: 3, radiusXIn: 5, radiusYIn: 2, turn: 'anticlockwise' },
      { kind: 'close' },
    ])
    expect(d).toBe('M 0 -1 A 5 2 0 0 0 5 -3 Z')
  })
})
