import { drawBed } from '@almanac/softener/drawing/bed-drawing'
import type { BedDrawing } from '@almanac/softener/drawing/drawing-types'
import { describe, expect, it } from 'vitest'
import { SPEAKING } from '../../tests/support/speaking.ts'
import { layoutBed } from './bed-layout.ts'
import { wrapWords } from './wrap-words.ts'

function draw(
  diameterIn: number,
  heightIn: number,
  more: { resinVolumeFt3?: number; gravelLb?: number; backwashGpm?: number },
): BedDrawing {
  const drawn = drawBed({ diameterIn, heightIn, waterTemperatureF: 52, ...SPEAKING, ...more })
  if (!drawn.ok) throw new Error(drawn.reason)
  return drawn.value
}

const beds = {
  'an ordinary 10×54': draw(10, 54, { resinVolumeFt3: 1.5, gravelLb: 18, backwashGpm: 2.4 }),
  'one that rises into the valve': draw(9, 48, { resinVolumeFt3: 1.4, gravelLb: 2, backwashGpm: 6 }),
  'one of which little is known': draw(12, 52, {}),
  'a wide commercial tank': draw(24, 72, { resinVolumeFt3: 10, gravelLb: 200, backwashGpm: 15 }),
}

describe.each(Object.entries(beds))('the drawing of %s', (_, drawing) => {
  it.each([300, 358, 620, 1000].flatMap((width) => [16, 18].map((font) => [width, font] as const)))(
    'has no overlapping texts at %i px and %i px type',
    (width, font) => {
      const layout = layoutBed(drawing, width, 640, font)
      const rows = layout.labels.map((l) => [l.middle - l.height / 2, l.middle + l.height / 2] as const).sort((a, b) => a[0] - b[0])
      expect(rows.length).toBeGreaterThanOrEqual(3)
      for (const [i, [top, bottom]] of rows.entries()) {
        expect(top).toBeGreaterThanOrEqual(0)
        expect(bottom).toBeLessThanOrEqual(layout.height)
        const above = rows[i - 1]
        if (above) expect(top).toBeGreaterThanOrEqual(above[1])
      }
    },
  )

  it('stands to one scale and inside its sheet', () => {
    const layout = layoutBed(drawing, 620, 640, 16)
    expect(layout.scale).toBeGreaterThan(0)
    expect(layout.origin.y - drawing.bounds.maxY * layout.scale).toBeGreaterThanOrEqual(0)
    expect(layout.origin.x + drawing.bounds.minX * layout.scale).toBeGreaterThan(layout.dimensionX.left)
    expect(layout.origin.x + drawing.bounds.maxX * layout.scale).toBeLessThan(layout.dimensionX.right)
  })
})

describe('breaking a text into lines', () => {
  it('breaks at spaces and never inside a word', () => {
    expect(wrapWords('as the old tube, with its basket', 12)).toEqual(['as the old', 'tube, with', 'its basket'])
    expect(wrapWords('31% at 52 °F, 2.4 gpm', 16)).toEqual(['31% at 52\u00a0°F,', '2.4\u00a0gpm'])
    expect(wrapWords('unbreakableword so', 5)).toEqual(['unbreakableword', 'so'])
  })
})
