import { bedLevels, expandedBed } from '@almanac/softener/tanks/bed-levels'
import { fillForTank } from '@almanac/softener/tanks/fill-for-tank'
import {
  checkTankSize,
  depthInStraightIn,
  levelOfVolumeIn,
  tankAreaFt2,
  tankShell,
  volumeBelowFt3,
} from '@almanac/softener/tanks/tank-geometry'
import { TANK_SIZES } from '@almanac/softener/tanks/tank-sizes'
import { resinFt3ForGrains } from '@almanac/units/nominal-grains'
import { describe, expect, it } from 'vitest'
import { SPEAKING } from '../support/speaking.ts'

// Common practice, no source: the table of usual fills. Area and volume are derived (volume 0.92 of the cylinder, an assumption).
const TABLE: readonly (readonly [
  d: number,
  h: number,
  area: number,
  volume: number,
  resin: number,
  depth: number,
  flow5: number,
  gravel: [number, number],
])[] = [
  [7, 44, 0.267, 0.9, 0.5, 22.4, 1.3, [8, 10]],
  [8, 44, 0.349, 1.18, 0.75, 25.8, 1.7, [10, 12]],
  [9, 48, 0.442, 1.63, 1.0, 27.2, 2.2, [12, 15]],
  [10, 44, 0.545, 1.84, 1.25, 27.5, 2.7, [15, 20]],
  [10, 54, 0.545, 2.26, 1.5, 33.0, 2.7, [15, 20]],
  [12, 52, 0.785, 3.13, 2.0, 30.6, 3.9, [20, 30]],
  [13, 54, 0.922, 3.82, 2.5, 32.5, 4.6, [25, 40]],
  [14, 65, 1.069, 5.33, 3, 33.7, 5.3, [40, 50]],
  [16, 65, 1.396, 6.96, 4, 34.4, 7.0, [50, 65]],
  [18, 65, 1.767, 8.81, 5, 34.0, 8.8, [75, 100]],
  [21, 62, 2.405, 11.4, 7, 34.9, 12.0, [100, 125]],
  [24, 72, 576 / 183.35, 17.3, 10, 38.2, 15.7, [200, 200]],
]

describe('usual tanks (common practice, no source; geometry derived)', () => {
  it('has the twelve usual sizes and no other', () =>
    expect(TANK_SIZES.map((tank) => [tank.diameterIn, tank.heightIn])).toEqual(TABLE.map(([d, h]) => [d, h])))

  it.each(TABLE)('%d × %d in', (d, h, area, volume, resin, depth, flow5, gravel) => {
    expect(Math.abs(tankAreaFt2(d) - area)).toBeLessThanOrEqual(0.0006)
    expect(Math.abs(tankAreaFt2(d) - (d * d) / 183.35)).toBeLessThan(1e-4 * area)
    expect(Math.abs(tankShell(d, h).volumeFt3 / volume - 1)).toBeLessThanOrEqual(0.006)
    expect(Math.abs(tankAreaFt2(d) * 5 - flow5)).toBeLessThanOrEqual(0.055)
    const fill = fillForTank({ diameterIn: d, heightIn: h }, SPEAKING)
    if (!fill.ok) throw new Error(fill.reason)
    expect(fill.value.resinFt3).toBe(resin)
    expect(Math.abs(depthInStraightIn(resin, tankAreaFt2(d)) - depth)).toBeLessThanOrEqual(0.06)
    const listed = TANK_SIZES.find((tank) => tank.diameterIn === d && tank.heightIn === h)
    expect([listed?.gravelLb.min, listed?.gravelLb.max]).toEqual(gravel)
    expect(fill.value.gravelLb).toBeGreaterThanOrEqual(gravel[0])
    expect(fill.value.gravelLb).toBeLessThanOrEqual(gravel[1])
    expect(fill.value.gravelLb).toBe(Math.ceil((gravel[0] + gravel[1]) / 2))
  })

  it('free volume of the usual fills, gravel counted: 10×54 39%, 10×44 with 1¼ ft³ 34 % (derived)', () => {
    // Within a point and a half: gravel is a range of 15 to 20 lb.
    expect(Math.abs(bedLevels(tankShell(10, 54), 1.5, 17.5).freeVolumeShare - 0.39)).toBeLessThan(0.015)
    expect(Math.abs(bedLevels(tankShell(10, 44), 1.25, 17.5).freeVolumeShare - 0.34)).toBeLessThan(0.015)
  })

  it.each([
    [32_000, 1],
    [40_000, 1.25],
    [48_000, 1.5],
    [64_000, 2],
  ])('%d nominal grains hold %d ft³ (common practice, no source)', (grains, ft3) => expect(resinFt3ForGrains(grains)).toBe(ft3))
})

describe('geometry of dished tanks (derived from the ellipsoid)', () => {
  it('the volume below the crown is the shell’s, and the two halves are equal', () => {
    for (const [d, h] of TABLE) {
      const shell = tankShell(d, h)
      expect(volumeBelowFt3(shell, h)).toBe(shell.volumeFt3)
      expect(volumeBelowFt3(shell, (shell.bottomIn + shell.crownIn) / 2)).toBeCloseTo(shell.volumeFt3 / 2, 10)
      // Half an ellipsoid holds two thirds of its enclosing cylinder.
      expect(volumeBelowFt3(shell, shell.bottomIn + d / 4)).toBeCloseTo(((2 / 3) * shell.areaFt2 * (d / 4)) / 12, 10)
    }
  })
  it('level and volume are each other’s inverse', () => {
    const shell = tankShell(10, 54)
    for (let ft3 = 0.01; ft3 < shell.volumeFt3; ft3 += 0.05) expect(volumeBelowFt3(shell, levelOfVolumeIn(shell, ft3))).toBeCloseTo(ft3, 8)
  })
  it('freeboard and expansion: a 10 × 54 with 1½ ft³ has room for its free volume and no more', () => {
    const shell = tankShell(10, 54)
    const levels = bedLevels(shell, 1.5, 18)
    expect(levels.freeboardIn).toBeCloseTo(shell.crownIn - levels.bedTopIn, 10)
    expect(expandedBed(shell, levels, 1.5, levels.freeVolumeShare - 0.01).overflows).toBe(false)
    expect(expandedBed(shell, levels, 1.5, levels.freeVolumeShare + 0.01).overflows).toBe(true)
    // In the straight part a bed grown by a tenth stands a tenth of its depth higher.
    expect(expandedBed(shell, levels, 1.5, 0.1).topIn - levels.bedTopIn).toBeCloseTo(3.3, 2)
  })
})

describe('what is known best comes first', () => {
  it('record before label before table before geometry', () => {
    const pick = (input: Parameters<typeof fillForTank>[0]) => {
      const fill = fillForTank(input, SPEAKING)
      return fill.ok ? [fill.value.resinFt3, fill.value.resinBasis] : [fill.reason]
    }
    expect(pick({ diameterIn: 10, heightIn: 54, resinFt3: 1.25, nominalGrains: 48_000 })).toEqual([1.25, 'recorded'])
    expect(pick({ diameterIn: 10, heightIn: 54, nominalGrains: 40_000 })).toEqual([1.25, 'label'])
    expect(pick({ diameterIn: 10, heightIn: 54 })).toEqual([1.5, 'table'])
    expect(pick({ nominalGrains: 32_000 })).toEqual([1, 'label'])
    // 0.61 of 2.43 ft³ is 1.48, down to the next quarter.
    expect(pick({ diameterIn: 11, heightIn: 48 })).toEqual([1.25, 'geometry'])
  })
  it('refuses in a sentence what no tank can be', () => {
    expect(checkTankSize(54, 10, SPEAKING.words)).toMatchObject({ ok: false })
    expect(fillForTank({ diameterIn: Number.NaN, heightIn: 54 }, SPEAKING)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('measure'),
    })
    expect(fillForTank({}, SPEAKING)).toMatchObject({ ok: false, reason: expect.stringContaining('needed') })
    expect(fillForTank({ resinFt3: -1 }, SPEAKING)).toMatchObject({ ok: false })
    expect(fillForTank({ resinFt3: 1, gravelLb: -3 }, SPEAKING)).toMatchObject({ ok: false })
  })
  it('warns of a tank filled to the top, too full, or short', () => {
    const warn = (resinFt3: number) => {
      const fill = fillForTank({ diameterIn: 10, heightIn: 54, resinFt3, gravelLb: 18 }, SPEAKING)
      return fill.ok ? fill.value.warnings.length : -1
    }
    expect([warn(2.2), warn(1.8), warn(1.5), warn(0.7)]).toEqual([1, 1, 0, 1])
  })
})
