import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { doseGrid } from '@almanac/softener/setting/dose-grid'
import { CALIFORNIA_LEAST_GR_PER_LB, NSF_LEAST_GR_PER_LB, NSF_MOST_GAL_PER_1000_GR } from '@almanac/softener/setting/efficiency-limits'
import { brineGal, fixedRegenerationGal, stepMinutes } from '@almanac/softener/setting/regeneration-steps'
import { type SettingFigures, type SettingQuestion, settingFigures } from '@almanac/softener/setting/setting-figures'
import { waterUse } from '@almanac/softener/setting/water-use'
import { dissolvedSolidsFactor } from '@almanac/softener/water/capacity-effects'
import { potassiumAddedMgL } from '@almanac/softener/water/regeneration'
import { describe, expect, it } from 'vitest'
import { CARD } from '../support/speaking.ts'

const off = (actual: number, expected: number) => Math.abs(actual - expected)
const priced: FirmFigures = { ...USUAL_FIGURES, saltPriceMinorPerLb: 20, waterPriceMinorPerGal: 1 }

const QUESTION: SettingQuestion = {
  ...{
    kind: 'gel-8',
    resinFt3: 1.5,
    arrangement: 'single',
    ageYears: 0,
    temperatureF: 60,
    hardnessGpg: 18,
    compensatedGpg: 18,
    metalsMgL: 0,
  },
  ...{ dissolvedSolidsMgL: null, people: 4, measuredGalDay: null, backwashGpm: 2.4, byTimer: false, refillGpm: 0.5, salt: 'NaCl' },
  ...{ mostLeakageMgL: null, wantedLbFt3: null },
}
function set(change: Partial<SettingQuestion> = {}, figures: FirmFigures = priced): SettingFigures {
  const found = settingFigures({ ...QUESTION, ...change }, figures, CARD)
  if ('reason' in found) throw new Error(found.reason)
  return found
}
const doseOf = (found: SettingFigures, at = found.chosen) => {
  const dose = found.doses[at]
  if (!dose) throw new Error('no dose')
  return dose
}

describe('water a day', () => {
  it('60 gal a person (trade rules 60 to 80, common practice); 138 gal a household (Residential End Uses of Water 2016); the meter first', () => {
    expect(waterUse(null, 4)).toEqual({ gallonsPerDay: 240, basis: 'people' })
    expect(waterUse(null, null)).toEqual({ gallonsPerDay: 138, basis: 'household' })
    expect(waterUse(300, 4)).toEqual({ gallonsPerDay: 300, basis: 'measured' })
  })
})

describe('a 1½ ft³ softener for four people at 18 gpg, worked by hand at 8 lb/ft³', () => {
  // K(8) = 25.4 + (29 − 25.4)·0.5/2.5 = 26.12 kgr/ft³ (typical data sheets); 4 × 60 × 18 = 4,320 gr a day; one day kept back (common practice).
  const found = set({ wantedLbFt3: 8 })
  const dose = doseOf(found)
  it('capacity 39,180 gr, 8.07 days, 1,937 gal', () => {
    expect(off(dose.capacityGr, 39_180)).toBeLessThan(0.01)
    expect(found.dailyGr).toBe(4320)
    expect(found.reserveGr).toBeCloseTo(4320, 6)
    expect(off(dose.days, (39_180 - 4320) / 4320)).toBeLessThan(1e-9)
    expect(off(found.gallonsBetween, 34_860 / 18)).toBeLessThan(1e-6)
  })
  it('12 lb of salt: 4 gal and 8 minutes of refill by the 3 lb rule; 543 lb a year', () => {
    expect(dose.saltLb).toBe(12)
    expect(found.refillGal).toBe(4)
    expect(found.minutes.refill).toBe(8)
    expect(off(dose.saltLbYear, (365.25 / 8.0694) * 12)).toBeLessThan(0.1)
  })
  it('water: 24 gal of backwash, 36 of rinses, 12 ÷ 0.894 of brine', () => {
    expect(off(dose.waterGal, 24 + 15 + 21 + 13.42)).toBeLessThan(0.01)
    expect(off(dose.galPer1000Gr, 73.42 / 39.18)).toBeLessThan(0.001)
    expect(off(dose.costMinorYear ?? 0, dose.saltLbYear * 20 + dose.waterGalYear)).toBeLessThan(1e-6)
  })
  it('leaks 5 mg/L (Michaud), 3,265 gr/lb, adds 7.864 × 18 mg/L of sodium (derived)', () => {
    expect(dose.leakageMgL).toBe(5)
    expect(off(dose.grPerLb, 3265)).toBeLessThan(0.1)
    expect(off(found.sodiumMgL, 141.55)).toBeLessThan(0.01)
  })
})

describe('steps', () => {
  it('within the published ranges: backwash 5 to 15 min (Ten States), rinse 7.5 to 22.5 gal/ft³ and brine 0.25 to 0.62 gpm/ft³ (Davis 2010)', () => {
    // 10 min; 10 gal/ft³ of slow rinse; 1.75 gpm/ft³ for 8 min (UFC 3-240-13FN: 1.5 to 2; Davis: 5 to 15 min).
    expect(fixedRegenerationGal(0, 1)).toBe(10 + 1.75 * 8)
    expect(fixedRegenerationGal(2, 0)).toBe(20)
    expect(stepMinutes(10, 1, 3.3, 0.5)).toEqual({
      backwash: 10,
      brineAndSlowRinse: Math.ceil((10 / 0.894 + 10) / 0.35),
      fastRinse: 8,
      refill: 7,
    })
    expect(stepMinutes(10, 1, 3.3, null).refill).toBeNull()
    expect(stepMinutes(1, 1, 0.1, 2).refill).toBe(1)
  })
  it('10% brine holds 0.894 lb a gallon: 8.345 lb × 1.071 × 0.1', () =>
    expect(off(9 / brineGal(9), 8.345 * 1.071 * 0.1)).toBeLessThan(0.001))
})

describe('capacity at the site', () => {
  it('age 3% a year of 1 to 5 (UFC 3-240-13FN); cold (Michaud); solids 2% for each 500 mg/L above 500 (from memory)', () => {
    expect(set({ ageYears: 5 }).ageShare).toBeCloseTo(0.85, 10)
    expect(set({ ageYears: null }).ageYears).toBe(5)
    expect(set({ temperatureF: 45 }).temperatureShare).toBeCloseTo(0.9, 10)
    expect(dissolvedSolidsFactor(1500)).toBeCloseTo(0.96, 10)
    expect(set({ ageYears: 5, temperatureF: 45, dissolvedSolidsMgL: 1500 }).capacityShare).toBeCloseTo(0.85 * 0.9 * 0.96, 10)
  })
  it('10% crosslink as 8%, fine mesh above it (Keller); never above 5,994 gr/lb by charge (derived)', () => {
    expect(doseOf(set({ kind: 'gel-10', wantedLbFt3: 10 })).capacityGr).toBeCloseTo(43_500, 6)
    expect(doseOf(set({ kind: 'fine-mesh', wantedLbFt3: 10 })).capacityGr).toBeCloseTo(47_250, 6)
    const steep = {
      ...priced,
      curves: { ...priced.curves, 'gel-8': { ...priced.curves['gel-8'], points: [[4, 23.9] as const, [15, 40] as const] } },
    }
    expect(doseOf(set({ temperatureF: 80, wantedLbFt3: 4 }, steep)).grPerLb).toBeCloseTo(5994, 0)
  })
  it('potassium chloride: 1.276 lb for a lb by equivalents, 2.6 lb a gallon of refill (from memory), potassium in place of sodium', () => {
    const found = set({ salt: 'KCl', wantedLbFt3: 8 * (74.551 / 58.443) })
    expect(doseOf(found).capacityGr).toBeCloseTo(39_180, 3)
    expect(off(doseOf(found).saltLb, 12 * (74.551 / 58.443))).toBeLessThan(1e-6)
    expect(off(found.refillGal, doseOf(found).saltLb / 2.6)).toBeLessThan(1e-9)
    expect(found.sodiumMgL).toBe(0)
    expect(off(doseOf(found).grPerLb, 3265)).toBeLessThan(0.1)
    // 39.098/50.0435 mg for each mg of hardness, 17.118 mg/L a gpg.
    expect(off(potassiumAddedMgL(18), 240.7)).toBeLessThan(0.1)
  })
})

describe('the dose', () => {
  const grid = doseGrid(priced.curves, 'gel-8', 'NaCl')
  it('4 to 15 lb/ft³ by halves are compared', () =>
    expect(grid.map((one) => one.saltLbFt3)).toEqual(Array.from({ length: 23 }, (_, at) => 4 + at / 2)))
  it('the best costs least of all that will do, written out again', () => {
    for (const [saltPrice, waterPrice] of [
      [20, 1],
      [5, 3],
      [100, 0],
      [1, 10],
    ]) {
      const found = set({}, { ...priced, saltPriceMinorPerLb: saltPrice ?? 0, waterPriceMinorPerGal: waterPrice ?? 0 })
      const costs = found.doses.map((one) =>
        one.fault ? Number.POSITIVE_INFINITY : one.saltLbYear * (saltPrice ?? 0) + one.waterGalYear * (waterPrice ?? 0),
      )
      expect(found.best).toBe(costs.indexOf(Math.min(...costs)))
      expect(found.by).toBe('cost')
    }
  })
  it('dear water and cheap salt call for more salt', () => {
    const at = (salt: number, water: number) =>
      doseOf(set({}, { ...priced, saltPriceMinorPerLb: salt, waterPriceMinorPerGal: water })).saltLbFt3
    expect(at(1, 10)).toBeGreaterThan(at(20, 1))
  })
  it('without a price of salt the salt itself is compared; without one of water only salt is counted', () => {
    const found = set({}, USUAL_FIGURES)
    expect(found.by).toBe('salt')
    expect(doseOf(found).costMinorYear).toBeNull()
    const salt = found.doses.map((one) => one.saltLbYear)
    expect(found.best).toBe(salt.indexOf(Math.min(...salt)))
    expect(doseOf(set({}, { ...USUAL_FIGURES, saltPriceMinorPerLb: 20 })).costMinorYear).toBeGreaterThan(0)
  })
  it('no more than 1 gpg may pass (NSF/ANSI 44’s end of run): salty water asks for more salt', () => {
    // 40/S × (2,000/1,000)² ≤ 17.1 from 9.36 lb/ft³ up.
    expect(doseOf(set({ dissolvedSolidsMgL: 2000 })).saltLbFt3).toBe(9.5)
    expect(doseOf(set({ mostLeakageMgL: 4 })).saltLbFt3).toBe(10)
    expect(set({ dissolvedSolidsMgL: 5000 })).toMatchObject({ by: 'none', best: 22 })
  })
  it('at most 14 days, 4 with iron and manganese from 0.3 mg/L (practice says 3 to 4, no source; limit of 12 VAC 5-590-900)', () => {
    expect(doseOf(set({ people: 1 })).intervalDays).toBe(14)
    expect(doseOf(set({ people: 1, metalsMgL: 0.3 })).intervalDays).toBe(4)
    expect(doseOf(set({ people: 1, metalsMgL: 0.29 })).intervalDays).toBe(14)
  })
  it('iron in the water is not given the least salt but 8 lb/ft³ or more, and a longer backwash (practice, no source)', () => {
    expect(doseOf(set({ metalsMgL: 0 })).saltLbFt3).toBeLessThan(8)
    expect(doseOf(set({ metalsMgL: 1 })).saltLbFt3).toBeGreaterThanOrEqual(8)
    expect([set({ metalsMgL: 0 }).minutes.backwash, set({ metalsMgL: 1 }).minutes.backwash]).toEqual([10, 14])
  })
  it('a timer counts whole days', () => {
    const found = set({ byTimer: true })
    for (const one of found.doses) expect(Number.isInteger(one.intervalDays)).toBe(true)
    expect(doseOf(set({ byTimer: true, wantedLbFt3: 8 })).intervalDays).toBe(8)
  })
  it('a softener too small for its house is told, with the largest dose', () =>
    expect(set({ people: 60 })).toMatchObject({ by: 'none', chosen: 22 }))
  it('a reserve as a share of the capacity', () => {
    const found = set({ wantedLbFt3: 8 }, { ...priced, reserve: { kind: 'share', share: 0.25 } })
    expect(found.reserveGr).toBeCloseTo(0.25 * 39_180, 6)
  })
})

describe('published limits', () => {
  it('NSF/ANSI 44: 3,350 gr/lb and 5.0 gal per 1,000 gr; California HSC 116785: 4,000 gr/lb', () => {
    expect([NSF_LEAST_GR_PER_LB, NSF_MOST_GAL_PER_1000_GR, CALIFORNIA_LEAST_GR_PER_LB]).toEqual([3350, 5, 4000])
  })
  it('new resin at 5 lb/ft³ just meets California: 20 kgr for 5 lb (typical data sheets)', () =>
    expect(doseOf(set({ wantedLbFt3: 5 })).grPerLb).toBeCloseTo(4000, 6))
  it('the trade’s 32,000 gr at 15 lb is 2,133 gr/lb, and meets neither', () => expect(off(32_000 / 15, 2133)).toBeLessThan(0.5))
})

describe('twin tanks', () => {
  it('together: twice capacity and salt at once; the refill is for each', () => {
    const [one, both] = [set({ wantedLbFt3: 8 }), set({ wantedLbFt3: 8, arrangement: 'twin-parallel' })]
    expect(doseOf(both).capacityGr).toBeCloseTo(2 * doseOf(one).capacityGr, 6)
    expect(doseOf(both).saltLb).toBe(24)
    expect(both.refillGal).toBe(4)
  })
  it('in turn: nothing is kept back, for the other tank is ready', () => {
    const turn = set({ wantedLbFt3: 8, arrangement: 'twin-alternating' })
    expect(turn.reserveGr).toBe(0)
    expect(doseOf(turn).days).toBeCloseTo(39_180 / 4320, 9)
  })
})

describe('refusals', () => {
  it('water without hardness, and a bed with nothing left', () => {
    expect(settingFigures({ ...QUESTION, compensatedGpg: 0.1 }, priced, CARD)).not.toHaveProperty('reason')
    expect(settingFigures({ ...QUESTION, compensatedGpg: 0.099 }, priced, CARD)).toMatchObject({
      ok: false,
      reason: expect.stringMatching(/no hardness/),
    })
    expect(settingFigures({ ...QUESTION, ageYears: 34 }, priced, CARD)).toMatchObject({
      ok: false,
      reason: expect.stringMatching(/Rebed before/),
    })
  })
})
