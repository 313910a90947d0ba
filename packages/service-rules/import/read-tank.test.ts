import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readTank } from './read-tank.ts'

function size(text: string) {
  const reading = readTank(text)
  return reading.ok ? [reading.value.diameterIn, reading.value.heightIn, reading.value.tankCount] : reading.reason
}

describe('tank sizes', () => {
  test.each([
    ['10x54', 10, 54, 1],
    ['10X54', 10, 54, 1],
    ['10 x 54"', 10, 54, 1],
    ['10" × 54"', 10, 54, 1],
    ['10” x 54”', 10, 54, 1],
    ["10'' x 54''", 10, 54, 1],
    ['10in x 54in', 10, 54, 1],
    ['10 in. x 54 in.', 10, 54, 1],
    ['10 by 54', 10, 54, 1],
    ['10*54', 10, 54, 1],
    ['10-54', 10, 54, 1],
    ['13/54', 13, 54, 1],
    ['1054', 10, 54, 1],
    ['844', 8, 44, 1],
    ['8x44', 8, 44, 1],
    ['8 x 44', 8, 44, 1],
    ['7x44', 7, 44, 1],
    ['9.5x48', 9.5, 48, 1],
    ['10x54x2.5', 10, 54, 1],
    ['14x65x4', 14, 65, 1],
    ['54x10', 10, 54, 1],
    ['twin 14x65', 14, 65, 2],
    ['Duplex 14 x 65', 14, 65, 2],
    ['2 x 14x65', 14, 65, 2],
    ['2-10x54', 10, 54, 2],
    ['(2) 10x54', 10, 54, 2],
    ['10x54 (2)', 10, 54, 2],
    ['10x54 x2', 10, 54, 2],
    ['2 tanks 10x54', 10, 54, 2],
    ['triplex 21x62', 21, 62, 3],
    ['  10x54 tank ', 10, 54, 1],
    ['257 x 1372 mm', 10.1, 54, 1],
  ])('%j', (text, diameterIn, heightIn, tankCount) => expect(size(text)).toEqual([diameterIn, heightIn, tankCount]))

  test.each(['10x', 'x54', '10x5400', '2x3', '10x54 / 12x52', '5600 10x54', '2850', 'banana', '', '1.5', '10,54', '-', '99x99'])(
    '%j is refused with advice',
    (text) => expect(size(text)).toMatch(/Type it as 10x54|cu ft/),
  )
})

describe('ratings and volumes', () => {
  // 32,000 grains a cubic foot is the trade's nominal rating: 48,000 is 1½ ft³. Common practice, no source.
  test.each([
    ['48,000 grain', 48_000, 1.5],
    ['48000', 48_000, 1.5],
    ['48 000 gr', 48_000, 1.5],
    ['48.000 grains', 48_000, 1.5],
    ['48,000-grain', 48_000, 1.5],
    ['48k', 48_000, 1.5],
    ['48 K', 48_000, 1.5],
    ['48kgr', 48_000, 1.5],
    ['32k grains', 32_000, 1],
    ['64K GRAIN', 64_000, 2],
  ])('%j', (text, nominalGrains, resinVolumeFt3) =>
    expect(readTank(text)).toMatchObject({ ok: true, value: { kind: 'nominal-grains', nominalGrains, resinVolumeFt3 } }),
  )

  test.each([
    ['1.5 cu ft', 1.5],
    ['1.5cuft', 1.5],
    ['1,5 cu ft', 1.5],
    ['1½ cu ft', 1.5],
    ['1 1/2 cf', 1.5],
    ['3/4 cubic foot', 0.75],
    ['2.0 cu.ft.', 2],
    ['1.5 ft³', 1.5],
    // 1 ft³ is 28.316846592 L exactly.
    ['42 L', 42 / 28.316846592],
    ['42 litres', 42 / 28.316846592],
    ['28.316846592l', 1],
  ])('%j', (text, volumeFt3) => {
    const reading = readTank(text)
    expect(reading).toMatchObject({ ok: true, value: { kind: 'resin-volume', nominalGrains: null } })
    if (reading.ok) expect(reading.value.resinVolumeFt3).toBeCloseTo(volumeFt3, 9)
  })

  test('several facts in one cell are all kept', () => {
    expect(readTank('twin 10x54 48k 1.5 cu ft')).toMatchObject({
      ok: true,
      value: { kind: 'size', diameterIn: 10, heightIn: 54, nominalGrains: 48_000, resinVolumeFt3: 1.5, tankCount: 2 },
    })
  })

  test('a size alone does not invent a fill', () => {
    expect(readTank('10x54')).toMatchObject({ ok: true, value: { resinVolumeFt3: null, nominalGrains: null }, assumptions: [] })
  })

  test('words that were not understood are said, not dropped', () => {
    expect(readTank('10x54 blue')).toMatchObject({ ok: true, assumptions: ['"blue" was left unread.'] })
  })

  test('a bare number needs the unit of its column', () => {
    expect(readTank('1.5').ok).toBe(false)
    expect(readTank('1.5', 'ft3')).toMatchObject({ ok: true, value: { resinVolumeFt3: 1.5 } })
    expect(readTank('42', 'L')).toMatchObject({ ok: true, value: { kind: 'resin-volume' } })
  })
})

test('any text gives whole numbers of tanks and finite measures, or a reason', () => {
  const pieces = fc.constantFrom(
    '10',
    'x',
    '54',
    '"',
    ' ',
    '48',
    'k',
    ',000',
    'grain',
    'twin',
    '(2)',
    '1½',
    'cu ft',
    'L',
    '/',
    '-',
    '=',
    'é',
    '٣',
  )
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        fc.array(pieces, { maxLength: 8 }).map((parts) => parts.join('')),
      ),
      (text) => {
        const reading = readTank(text)
        if (!reading.ok) return reading.reason.length > 10
        const { diameterIn, heightIn, nominalGrains, resinVolumeFt3, tankCount } = reading.value
        const measures = [diameterIn, heightIn, nominalGrains, resinVolumeFt3].filter((one) => one !== null)
        return (
          measures.length > 0 && measures.every((one) => Number.isFinite(one) && one > 0) && Number.isInteger(tankCount) && tankCount >= 1
        )
      },
    ),
    { numRuns: 2000 },
  )
})
