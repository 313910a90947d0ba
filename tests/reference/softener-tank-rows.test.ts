import { decideGravel } from '@almanac/softener/kit/decide-gravel'
import { tubeLength, tubeOutsideDiameter, usualTubeOutsideDiameterIn } from '@almanac/softener/tanks/distributor-tube'
import { fillForTank, USUAL_FILL_SHARE } from '@almanac/softener/tanks/fill-for-tank'
import { checkTankSize, levelOfVolumeIn, tankShell, volumeBelowFt3 } from '@almanac/softener/tanks/tank-geometry'
import { findTankSize, TANK_SIZES } from '@almanac/softener/tanks/tank-sizes'
import { describe, expect, it } from 'vitest'
import { SPEAKING } from '../support/speaking.ts'

type Row = [d: number, h: number, resin: [number, number, number], gravel: [number, number, number], openings: number[]]

// The trade's table of usual fills: common practice, no source. Ranges as the trade gives them, with the value to start from between.
const ROWS: Row[] = [
  [7, 44, [0.5, 0.5, 0.5], [8, 9, 10], [2.5]],
  [8, 44, [0.75, 0.75, 0.75], [10, 11, 12], [2.5]],
  [9, 48, [1, 1, 1], [12, 14, 15], [2.5]],
  [10, 44, [1, 1.25, 1.25], [15, 18, 20], [2.5]],
  [10, 54, [1.5, 1.5, 1.5], [15, 18, 20], [2.5]],
  [12, 52, [2, 2, 2], [20, 25, 30], [2.5]],
  [13, 54, [2.5, 2.5, 2.5], [25, 33, 40], [2.5]],
  [14, 65, [3, 3, 3.5], [40, 45, 50], [2.5, 4]],
  [16, 65, [4, 4, 4], [50, 58, 65], [2.5, 4]],
  [18, 65, [5, 5, 5], [75, 88, 100], [4]],
  [21, 62, [7, 7, 7], [100, 113, 125], [4]],
  [24, 72, [10, 10, 10], [200, 200, 200], [4]],
]

describe('rows of the usual fills (common practice, no source)', () => {
  it.each(ROWS)('%d × %d in', (d, h, resin, gravel, openings) => {
    const row = TANK_SIZES.find((tank) => tank.diameterIn === d && tank.heightIn === h)
    expect([row?.resinFt3.min, row?.resinFt3.usual, row?.resinFt3.max]).toEqual(resin)
    expect([row?.gravelLb.min, row?.gravelLb.usual, row?.gravelLb.max]).toEqual(gravel)
    expect(row?.openingsIn).toEqual(openings)
  })

  it('takes a size measured within half an inch and one inch, and no further (our own choice)', () => {
    expect(findTankSize(10.5, 53)?.heightIn).toBe(54)
    expect(findTankSize(10.52, 54)).toBeNull()
    expect(findTankSize(10, 55.01)).toBeNull()
    expect(findTankSize(10, 55)?.heightIn).toBe(54)
  })
})

const fill = (input: Parameters<typeof fillForTank>[0]) => {
  const made = fillForTank(input, SPEAKING)
  if (!made.ok) throw new Error(made.reason)
  return made.value
}

describe('a size that is not listed', () => {
  // Mean of usual resin over shell volume in the table, worked out here from its rows: 0.612.
  it('is filled as listed tanks are on average', () => {
    const shares = ROWS.map(([d, h, resin]) => resin[1] / ((0.92 * Math.PI * d * d * h) / 4 / 1728))
    const mean = shares.reduce((sum, one) => sum + one, 0) / shares.length
    expect(Math.abs(USUAL_FILL_SHARE - mean)).toBeLessThan(0.005)
    // 0.61 × 0.92 × π/4 × D² × H / 1728: 16 × 59 is 3.85 ft³, above 3 ft³ down to a half; 13 × 66 is 2.84, down to a quarter.
    expect(fill({ diameterIn: 16, heightIn: 59 }).resinFt3).toBe(3.5)
    expect(fill({ diameterIn: 13, heightIn: 66 }).resinFt3).toBe(2.75)
    // 5 × 20: 0.1275 ft³ is less than a part bag and keeps its hundredths.
    expect(fill({ diameterIn: 5, heightIn: 20 }).resinFt3).toBe(0.13)
  })

  it('gets gravel as listed tanks of its diameter, and never more than the fullest of them (24 × 72: 200 lb in 17.34 ft³)', () => {
    const most = 200 / 100 / ((0.92 * Math.PI * 24 * 24 * 72) / 4 / 1728)
    expect(most).toBeCloseTo(0.115, 3)
    // A short wide tank: 24 × 30 holds 7.226 ft³, 11.5% of it are 83 lb; by its area it would get 200.
    expect(fill({ diameterIn: 24, heightIn: 30 }).gravelLb).toBe(83)
    expect(fill({ diameterIn: 24, heightIn: 100 }).gravelLb).toBe(200)
  })

  it('of unknown size gets 12 lb of gravel a cubic foot', () => expect(fill({ resinFt3: 2 }).gravelLb).toBe(24))
})

describe('limits of entry (our own: beyond them a figure is a slip)', () => {
  const stands = (input: Parameters<typeof fillForTank>[0]) => fillForTank(input, SPEAKING).ok
  it('resin and gravel', () => {
    expect([0.01, 499.9].map((resinFt3) => stands({ resinFt3 }))).toEqual([true, true])
    expect([0.0099, 500].map((resinFt3) => stands({ resinFt3 }))).toEqual([false, false])
    expect([0, 19_999].map((gravelLb) => stands({ resinFt3: 1, gravelLb }))).toEqual([true, true])
    expect([-1, 20_000].map((gravelLb) => stands({ resinFt3: 1, gravelLb }))).toEqual([false, false])
  })

  it('tank sizes', () => {
    expect([checkTankSize(4, 10, SPEAKING.words), checkTankSize(72, 144, SPEAKING.words)]).toEqual([null, null])
    for (const [d, h] of [
      [3.99, 20],
      [72.01, 100],
      [8, 9.99],
      [20, 144.01],
    ] as const)
      expect(checkTankSize(d, h, SPEAKING.words)?.ok).toBe(false)
  })

  it('a fill that is doubtful for its tank: over 95%, over three quarters, under 35% of it', () => {
    const shell = tankShell(10, 54).volumeFt3
    const warn = (share: number, gravelLb = 0) => fill({ diameterIn: 10, heightIn: 54, resinFt3: share * shell, gravelLb }).warnings.join()
    expect([warn(0.96), warn(0.94), warn(0.76), warn(0.74), warn(0.36), warn(0.34)].map((words) => words.slice(0, 12))).toEqual([
      'Resin and gr',
      'The tank is ',
      'The tank is ',
      '',
      '',
      'The tank is ',
    ])
    expect(warn(0.34)).toContain('only about a third')
    expect(warn(0.76)).toContain('three quarters')
  })
})

describe('distributor tubes (from memory, unverified)', () => {
  // Pipe of ¾ in is 1.050 in outside, of 1½ in 1.900 in (ASME B36.10M).
  it('sizes', () => {
    expect(usualTubeOutsideDiameterIn(10)).toBe(1.05)
    expect(usualTubeOutsideDiameterIn(15.9)).toBe(1.05)
    expect(usualTubeOutsideDiameterIn(16)).toBe(1.9)
    expect(tubeOutsideDiameter(0.25, 10).assumed).toBe(false)
    expect(tubeOutsideDiameter(0.24, 10).assumed).toBe(true)
  })

  it('an old length is believed where it could stand in the tank', () => {
    const basis = (length: number) => tubeLength(tankShell(10, 54), length, SPEAKING.words).basis
    expect([27.1, 59.9].map(basis)).toEqual(['old tube', 'old tube'])
    expect([26.9, 60.1].map(basis)).toEqual(['estimate', 'estimate'])
  })
})

describe('the dished ends', () => {
  // A half ellipsoid holds two thirds of its cylinder (Archimedes), and up to half its depth from the pole 5/16 of the cylinder.
  it('hold what half an ellipsoid holds', () => {
    const shell = tankShell(10, 54)
    expect(shell.headDepthIn).toBe(2.5)
    const cylinder = (shell.areaFt2 * 2.5) / 12
    expect(volumeBelowFt3(shell, shell.bottomIn + 2.5) / cylinder).toBeCloseTo(2 / 3, 9)
    expect(volumeBelowFt3(shell, shell.bottomIn + 1.25) / cylinder).toBeCloseTo(5 / 16 - 1 / 48 - 1 / 12, 9)
    expect(levelOfVolumeIn(shell, volumeBelowFt3(shell, shell.bottomIn + 1))).toBeCloseTo(shell.bottomIn + 1, 6)
  })

  it('are flatter in a tank too squat for them: 1.5 × 8% of its height', () => {
    // 24 × 30: a quarter of the diameter would be 6 in.
    expect(tankShell(24, 30).headDepthIn).toBeCloseTo(3.6, 9)
  })
})

describe('gravel', () => {
  it('is left out below 1½ ft³ where nothing is recorded (common practice, no source)', () => {
    const decide = (resinFt3: number) =>
      decideGravel(SPEAKING, { resinFt3, resinBasis: 'label', gravelLb: 18, gravelBasis: 'table', warnings: [] }).newLb
    expect([1.49, 1.5].map(decide)).toEqual([0, 18])
  })
})
