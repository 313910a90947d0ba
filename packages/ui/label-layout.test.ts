import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { layoutLabels } from './label-layout.ts'

describe('labels along an axis', () => {
  it('leaves labels alone that do not touch', () => {
    expect(
      layoutLabels(
        [
          { at: 10, size: 10 },
          { at: 50, size: 10 },
        ],
        2,
      ),
    ).toEqual([10, 50])
  })

  it('pushes two that want the same place apart by the same way', () => {
    // Worked by hand: 20 + 4 apart around 100.
    expect(
      layoutLabels(
        [
          { at: 100, size: 20 },
          { at: 100, size: 20 },
        ],
        4,
      ),
    ).toEqual([88, 112])
  })

  it('keeps the order given, not the order along the axis, in its answer', () => {
    expect(
      layoutLabels(
        [
          { at: 50, size: 10 },
          { at: 10, size: 10 },
        ],
        2,
      ),
    ).toEqual([50, 10])
  })

  it('holds labels inside the bounds', () => {
    expect(
      layoutLabels(
        [
          { at: 0, size: 20 },
          { at: 95, size: 20 },
        ],
        0,
        0,
        100,
      ),
    ).toEqual([10, 90])
  })

  it('runs past the far end rather than overlap', () => {
    expect(
      layoutLabels(
        [
          { at: 0, size: 20 },
          { at: 0, size: 20 },
        ],
        0,
        0,
        30,
      ),
    ).toEqual([10, 30])
  })

  it('never lets two labels overlap', () => {
    const label = fc.record({ at: fc.double({ min: -500, max: 500, noNaN: true }), size: fc.double({ min: 1, max: 60, noNaN: true }) })
    fc.assert(
      fc.property(fc.array(label, { maxLength: 12 }), (labels) => {
        const placed = layoutLabels(labels, 3, 0, 400).map((middle, i) => ({ middle, size: labels[i]?.size ?? 0 }))
        placed.sort((a, b) => a.middle - b.middle)
        for (let i = 1; i < placed.length; i++) {
          const [a, b] = [placed[i - 1], placed[i]]
          if (a && b) expect(b.middle - a.middle).toBeGreaterThanOrEqual((a.size + b.size) / 2 + 3 - 1e-6)
        }
      }),
    )
  })
})
