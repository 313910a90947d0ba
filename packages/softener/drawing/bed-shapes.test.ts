import { describe, expect, test } from 'vitest'
import { SPEAKING } from '../../../tests/support/speaking.ts'
import { drawBed } from './bed-drawing.ts'
import { bedShapes, boundsOf, tankShapes, tubeShapes } from './bed-shapes.ts'
import type { BedDrawingInput } from './drawing-types.ts'
import { drawnBed } from './drawn-bed.ts'

const bedOf = (change: Partial<BedDrawingInput> = {}) => {
  const made = drawnBed({ diameterIn: 10, heightIn: 54, ...SPEAKING, ...change })
  if (!made.ok) throw new Error(made.reason)
  return made.value
}
/** Half width, foot and top of what is drawn for a part. */
function box(role: string, change: Partial<BedDrawingInput> = {}): number[] {
  const bed = bedOf(change)
  const shapes = [...tankShapes(bed), ...tubeShapes(bed), ...bedShapes(bed)].filter((shape) => shape.role === role)
  const ys = shapes.flatMap((shape) => shape.path.flatMap((step) => (step.kind === 'close' ? [] : [step.y])))
  return [boundsOf(shapes).maxX, Math.min(...ys), Math.max(...ys)].map((value) => Number(value.toFixed(4)))
}

// Parts that no measure is kept of are drawn in proportion: our own choice, so that a drawing looks like the tank it stands for.
describe('proportions of parts without a measure', () => {
  test.each<[string, Partial<BedDrawingInput>, [number, number | null, number]]>([
    // 10 × 54 in: head 2.5 in, lowest point inside 1.3267 in, highest 52.6733 in (0.92 of the cylinder, shared between foot and neck).
    ['foot', {}, [4.2, 0, 2.7017]],
    ['neck', {}, [1.4, 52.5483, 54]],
    ['valve', {}, [2.38, 54, 55.8]],
    ['valve', { diameterIn: 7, heightIn: 44 }, [2.38, 44, 45.5]],
    ['neck', { diameterIn: 5, heightIn: 20, resinVolumeFt3: 0.1 }, [1.1, null, 20]],
    ['basket', {}, [0.945, 1.3267, 3.4267]],
    ['basket', { diameterIn: 6, heightIn: 12, resinVolumeFt3: 0.1, tubeOutsideDiameterIn: 1.9 }, [1.71, 0, 3]],
    ['cut-mark', {}, [3.36, 54, 54]],
    ['neck', { diameterIn: 16, heightIn: 65 }, [2.2, null, 65]],
    ['neck', { diameterIn: 15.9, heightIn: 65 }, [1.4, null, 65]],
  ])('%s of %j', (role, change, expected) => {
    const [halfWidth = 0, low = 0, high = 0] = box(role, change)
    expect(halfWidth).toBeCloseTo(expected[0], 3)
    expect(high).toBeCloseTo(expected[2], 3)
    if (expected[1] !== null) expect(low).toBeCloseTo(expected[1], 3)
  })
})

test('basket and foot stand the same to the left', () => {
  const shapes = [...tankShapes(bedOf()), ...tubeShapes(bedOf())]
  const left = (role: string) => boundsOf(shapes.filter((shape) => shape.role === role)).minX
  expect([left('basket'), left('foot')].map((x) => Number(x.toFixed(4)))).toEqual([-0.945, -4.2])
})

test('labels that would stand on each other are moved 7% of the height apart (our own choice)', () => {
  const made = drawBed({
    diameterIn: 10,
    heightIn: 54,
    resinVolumeFt3: 2,
    gravelLb: 4,
    backwashGpm: 1,
    ...SPEAKING,
  })
  const at = (role: string) => (made.ok && made.value.dimensions.find((one) => one.role === role)?.labelAtIn) || 0
  expect(at('spare') - at('expansion')).toBeCloseTo(0.07 * 54, 9)
})

test('tells the water’s temperature in °F, and refuses a backwash that no pipe carries', () => {
  expect(bedOf({ backwashGpm: 2.4, waterTemperatureF: 52 }).expansion?.temperatureF).toBeCloseTo(52, 9)
  expect([999, 1000].map((backwashGpm) => drawnBed({ diameterIn: 10, heightIn: 54, backwashGpm, ...SPEAKING }).ok)).toEqual([true, false])
})
