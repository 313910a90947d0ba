import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { CLUE_ERRORS } from '@almanac/softener/identify/clue-errors'
import { expectedReading, readingDensity } from '@almanac/softener/identify/clue-likelihood'
import type { SizeHypothesis, TankClues } from '@almanac/softener/identify/clue-types'
import { identifyTank } from '@almanac/softener/identify/identify-tank'
import { sizeHypotheses } from '@almanac/softener/identify/size-hypotheses'
import { describe, expect, it } from 'vitest'
import { TANK } from '../support/speaking.ts'

const identify = (clues: TankClues) => {
  const found = identifyTank({ clues, figures: USUAL_FIGURES, ...TANK })
  if (!found.ok) throw new Error(found.reason)
  return found.value
}

// The trade's table of usual sizes: diameter, height, resin, bed depth = resin / area as the trade gives it. Common practice, no source.
const ROWS: [d: number, h: number, resinFt3: number, bedIn: number][] = [
  [7, 44, 0.5, 22.4],
  [8, 44, 0.75, 25.8],
  [9, 48, 1, 27.2],
  [10, 44, 1.25, 27.5],
  [10, 54, 1.5, 33.0],
  [12, 52, 2, 30.6],
  [13, 54, 2.5, 32.5],
  [14, 65, 3, 33.7],
  [16, 65, 4, 34.4],
  [18, 65, 5, 34.0],
  [21, 62, 7, 34.9],
  [24, 72, 10, 38.2],
]

describe('a listed tank measured exactly ranks first', () => {
  it.each(ROWS)('%d × %d in', (d, h, resinFt3, bedIn) => {
    const id = `${d}x${h}`
    const clues: TankClues[] = [
      { writtenDiameterIn: d, writtenHeightIn: h },
      { circumferenceIn: Math.PI * d, heightIn: h },
      { diameterIn: d, heightIn: h },
      // A valve stands some 5 to 10 in above the rim; from memory.
      { circumferenceIn: Math.PI * d, heightWithValveIn: h + 7.5 },
      // 32,000 grains mean a cubic foot; common practice, no source.
      { nominalGrains: resinFt3 * 32_000, circumferenceIn: Math.PI * d, heightIn: h },
      { bedDepthIn: bedIn, circumferenceIn: Math.PI * d, heightIn: h, resinFt3 },
    ]
    for (const one of clues) {
      const found = identify(one)
      expect(found.candidates[0]?.id, JSON.stringify(one)).toBe(id)
      expect(found.odd, JSON.stringify(one)).toEqual([])
    }
    expect(identify(clues[1] ?? {}).candidates[0]?.kit?.resinFt3).toBe(resinFt3)
  })
})

const bare: SizeHypothesis = {
  ...{ diameterIn: 10, heightIn: 54, jacket: false, listed: 0, prior: 1, openingsIn: [2.5] },
  ...{ resinMinFt3: 1.5, resinMaxFt3: 1.5 },
}

describe('what each clue would read on a bare 10 × 54 in tank (geometry; allowances are common practice or from memory)', () => {
  it.each([
    ['circumferenceIn', 31.416], // π × 10
    ['diameterIn', 10],
    ['heightIn', 54],
    ['heightWithValveIn', 61.5], // middle of 5 to 10 in of valve
    ['nominalGrains', 48_000],
    ['resinFt3', 1.5],
    ['bedDepthIn', 33.0], // 1.5 ft³ over 0.545 ft²
    ['openingIn', 2.5],
  ] as const)('%s is %d', (clue, value) => {
    const { low, high } = expectedReading(clue, bare)
    expect(low).toBeCloseTo(value, value > 1000 ? 0 : 1)
    expect(high).toBeCloseTo(value, value > 1000 ? 0 : 1)
  })
  it('a jacket adds ¾ in across, 2.36 in round (from memory)', () => {
    const sleeved = { ...bare, jacket: true }
    expect(expectedReading('diameterIn', sleeved).low).toBeCloseTo(10.75, 6)
    expect(expectedReading('circumferenceIn', sleeved).low).toBeCloseTo(33.77, 2)
    expect(expectedReading('heightIn', sleeved).low).toBe(54)
  })
  it('the density of a height is a normal density with its share of slips, by hand', () => {
    // sd 0.75, one sd off: 0.97 × 0.60653 / (0.75 × 2.50663) + 0.03 / 90
    expect(readingDensity(54.75, expectedReading('heightIn', bare))).toBeCloseTo(0.97 * 0.322629 + 0.000333, 5)
  })
})

describe('chances before anything is measured (from memory; our own choice)', () => {
  const prior = (pick: (size: SizeHypothesis) => boolean) =>
    sizeHypotheses(USUAL_FIGURES.tanks).reduce((sum, size) => sum + (pick(size) ? size.prior : 0), 0)
  it('add up to 1; one tank in twelve is unlisted, 15 in a hundred wear a jacket', () => {
    expect(prior(() => true)).toBeCloseTo(1, 10)
    expect(prior((size) => size.listed < 0)).toBeCloseTo(0.08, 10)
    expect(prior((size) => size.jacket)).toBeCloseTo(0.15, 10)
  })
  it('are highest about 1¼ ft³ and fall off on both sides: exp(−½(ln(r/1.25)/0.8)²)', () => {
    const of = (d: number, h: number) => prior((size) => size.listed >= 0 && size.diameterIn === d && size.heightIn === h)
    // ln(10/1.25)/0.8 = 2.5993 → 0.03411; ln(1.5/1.25)/0.8 = 0.2279 → 0.97437
    expect(of(24, 72) / of(10, 44)).toBeCloseTo(0.0341, 3)
    expect(of(10, 54) / of(10, 44)).toBeCloseTo(0.9744, 3)
  })
})

it('each clue says how far it may be off, and where that is from', () => {
  for (const [clue, error] of Object.entries(CLUE_ERRORS)) {
    expect(TANK.tank(error.source), clue).toMatch(/common practice, no source|from memory/)
    expect(TANK.tank(`error/${clue as keyof typeof CLUE_ERRORS}`)).toMatch(/\.$/)
  }
})
