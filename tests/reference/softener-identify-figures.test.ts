import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { ASKS } from '@almanac/softener/identify/askable'
import { type CandidateKit, kitsDiffer } from '@almanac/softener/identify/candidate-kit'
import { CLUE_LIMITS, checkClues } from '@almanac/softener/identify/check-clues'
import { CLUE_ERRORS, JACKET_MISTAKEN, JACKET_SD_IN, VALVE_SD_IN, WRITTEN_HEIGHT_SD_IN } from '@almanac/softener/identify/clue-errors'
import { expectedReading, readingDensity } from '@almanac/softener/identify/clue-likelihood'
import type { SizeHypothesis } from '@almanac/softener/identify/clue-types'
import { KNOWN_FROM, NAMED_FROM } from '@almanac/softener/identify/identify-tank'
import { measureWorths } from '@almanac/softener/identify/next-measure'
import { ODD_FROM_SD } from '@almanac/softener/identify/odd-clues'
import { sizeHypotheses } from '@almanac/softener/identify/size-hypotheses'
import { groupSizes, weighSizes } from '@almanac/softener/identify/size-posterior'
import { describe, expect, it } from 'vitest'
import { TANK } from '../support/speaking.ts'

const size = (diameterIn: number, heightIn: number, listed = -1): SizeHypothesis => ({
  ...{ diameterIn, heightIn, listed, jacket: false, openingsIn: [2.5], resinMinFt3: 1, resinMaxFt3: 1.5, prior: 1 },
})

// Errors of a tape in a cellar, and what can be asked by telephone: from memory, no source was found. Written twice, so that neither copy changes
// alone; this shows that a figure is the one that was meant, not that it is true of the world.
describe('what was chosen, written a second time', () => {
  it.each([
    ['circumferenceIn', 0.7, 0.02, 120],
    ['diameterIn', 0.45, 0.03, 40],
    ['heightIn', 0.75, 0.03, 90],
    ['heightWithValveIn', 0.5, 0.03, 90],
    ['writtenDiameterIn', 0.3, 0.03, 30],
    ['nominalGrains', 0.1, 0.08, 4],
    ['resinFt3', 0.08, 0.04, 4],
    ['bedDepthIn', 2.5, 0.05, 60],
    ['openingIn', 0.2, 0.02, 5],
  ] as const)('%s: error %d, a slip in %d of cases, anywhere within %d', (clue, sd, slipShare, spread) =>
    expect(CLUE_ERRORS[clue]).toMatchObject({ sd, slipShare, spread }),
  )
  it('sleeves, valves, written heights', () =>
    expect([JACKET_SD_IN, VALVE_SD_IN, WRITTEN_HEIGHT_SD_IN, JACKET_MISTAKEN]).toEqual([0.35, 1.75, 0.6, 0.05]))
  it('how often each can be answered', () =>
    expect(ASKS.map(({ id, answered }) => [id, answered])).toEqual([
      ...[
        ['label', 0.35],
        ['circumferenceIn', 0.97],
        ['heightIn', 0.9],
        ['heightWithValveIn', 0.97],
        ['diameterIn', 0.9],
        ['jacket', 0.97],
      ],
    ]))
  it('from when on a size is named, an unlisted one is known, a clue is odd', () =>
    expect([NAMED_FROM, KNOWN_FROM, ODD_FROM_SD]).toEqual([0.02, 0.7, 3.5]))
})

describe('what can stand for a clue', () => {
  it.each([
    ['diameterIn', 4, 72],
    ['circumferenceIn', 12, 230],
    ['heightIn', 10, 144],
    ['heightWithValveIn', 12, 160],
    ['writtenDiameterIn', 4, 72],
    ['writtenHeightIn', 10, 144],
    ['nominalGrains', 4000, 2_000_000],
    ['resinFt3', 0.1, 100],
    ['bedDepthIn', 4, 100],
    ['openingIn', 1, 8],
  ] as const)('%s from %d to %d', (clue, least, most) => {
    for (const value of [least, most]) expect(checkClues({ [clue]: value }, TANK).problems).toEqual([])
    for (const value of [least * 0.99, most * 1.01]) expect(checkClues({ [clue]: value }, TANK).problems).toHaveLength(1)
  })
  it('no clue is left out above', () => expect(Object.keys(CLUE_LIMITS)).toHaveLength(10))
})

describe('sizes no table lists', () => {
  const unlisted = sizeHypotheses(USUAL_FIGURES.tanks).filter((one) => one.listed < 0)
  const heights = unlisted.map((one) => one.heightIn)
  const diameters = [...new Set(unlisted.map((one) => one.diameterIn))].sort((a, b) => a - b)
  it('every half inch from 5 to 42 across, every inch from 17 to 84 high, at least one and a half times as high as wide', () => {
    expect([Math.min(...heights), Math.max(...heights)]).toEqual([17, 84])
    expect(heights.every(Number.isInteger)).toBe(true)
    expect(diameters).toEqual(Array.from({ length: 75 }, (_, i) => 5 + i / 2))
    expect(Math.min(...unlisted.map((one) => one.heightIn / one.diameterIn))).toBe(1.5)
  })
  it('filled within 12 hundredths of the usual share, with either thread', () => {
    for (const one of unlisted.slice(0, 50)) {
      expect(one.resinMaxFt3 / one.resinMinFt3).toBeCloseTo(1.12 / 0.88, 10)
      expect(one.openingsIn).toEqual([2.5, 4])
    }
  })
  it('within half an inch of a listed size it is that size: 11 × 54 beside a table of 10½ × 54, not beside one of 10.48 × 54', () => {
    const row = USUAL_FIGURES.tanks.find((tank) => tank.diameterIn === 10 && tank.heightIn === 54)
    if (!row) throw new Error('no such tank')
    const has = (diameterIn: number) =>
      sizeHypotheses([{ ...row, diameterIn }]).some((one) => one.listed < 0 && one.diameterIn === 11 && one.heightIn === 54)
    expect([has(10.5), has(10.48)]).toEqual([false, true])
  })
  it('sizes within 1¼ in across and 3 in of height of the likeliest are the same tank, measured', () => {
    const share = (diameterIn: number, heightIn: number) =>
      groupSizes([
        { size: size(12, 40), chance: 0.6 },
        { size: size(diameterIn, heightIn), chance: 0.4 },
      ])[0]?.nearShare
    expect([share(13.25, 43), share(13.3, 43), share(13.25, 43.1)]).toEqual([
      expect.closeTo(1, 10),
      expect.closeTo(0.6, 10),
      expect.closeTo(0.6, 10),
    ])
  })
})

// Our own limit of work, no source; a pin like this notices a change, it does not prove the figure.
describe('sizes kept after weighing', () => {
  const alike = Array.from({ length: 320 }, (_, i) => size(10, 20 + i / 10))
  it('two hundred of 320 equally likely unlisted ones; a listed one is kept beside them however unlikely', () => {
    expect(weighSizes(alike, {})).toHaveLength(200)
    expect(weighSizes([...alike, { ...size(10, 54, 0), prior: 1e-6 }], {}).filter((one) => one.size.listed === 0)).toHaveLength(1)
  })
  it('what is cut off goes to the unlisted ones kept: 320 of them against a listed one of weight 80 stay at 320 ÷ 400 = 0.8', () => {
    const kept = weighSizes([...alike, { ...size(10, 54, 0), prior: 80 }], {})
    const chance = (listed: boolean) => kept.reduce((sum, one) => sum + (one.size.listed < 0 === listed ? 0 : one.chance), 0)
    expect([chance(true), chance(false)]).toEqual([expect.closeTo(0.2, 10), expect.closeTo(0.8, 10)])
  })
})

describe('kits that differ', () => {
  const kit = (change: Partial<CandidateKit>): CandidateKit => ({
    ...{ resinFt3: 1.5, bags: '', gravelLb: 18, tubeLengthIn: 52, crewSize: 2, fullTankLb: 200, ...change },
  })
  it('by more than two hundredths of a cubic foot, five pounds of gravel, or a person', () => {
    const differ = (change: Partial<CandidateKit>) => kitsDiffer([kit({}), kit(change)])
    expect([{ resinFt3: 1.519 }, { gravelLb: 23 }].map(differ)).toEqual([false, false])
    expect([{ resinFt3: 1.521 }, { gravelLb: 23.5 }, { crewSize: 1 }].map(differ)).toEqual([true, true, true])
  })
})

describe('what a question is worth', () => {
  const two = [
    { size: size(10, 54, 0), chance: 0.5 },
    { size: size(10, 56, 1), chance: 0.5 },
  ]
  const worth = (id: string) => measureWorths(two, {}).find((one) => one.id === id)?.bits ?? Number.NaN
  it('a label that names one of two sizes, 97 of 100 times surely: 1 − H(0.985) bits (Shannon 1948), read in 35 of 100 cases', () => {
    const h = -(0.985 * Math.log2(0.985) + 0.015 * Math.log2(0.015))
    expect(worth('label')).toBeCloseTo(0.35 * (1 - h), 8)
  })
  it('a height: the mutual information of size and reading by a fine sum over 20 in, within a hundredth of a bit', () => {
    const densities = two.map((one) => expectedReading('heightIn', one.size))
    const step = 0.001
    const sums = densities.map((expected) => {
      let sum = 0
      for (let x = 45; x < 65; x += step) sum += readingDensity(x, expected) * step
      return sum
    })
    let bits = 0
    for (let x = 45; x < 65; x += step) {
      const [a = 0, b = 0] = densities.map((expected, i) => readingDensity(x, expected) / (sums[i] ?? 1))
      const mean = (a + b) / 2
      bits += 0.5 * step * (a * Math.log2(a / mean) + b * Math.log2(b / mean))
    }
    expect(Math.abs(worth('heightIn') - 0.9 * bits)).toBeLessThan(0.01)
  })
})
