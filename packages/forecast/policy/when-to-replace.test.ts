import { describe, expect, it } from 'vitest'
import { tradePriors } from '../priors/trade-priors.ts'
import { whenToReplace } from './when-to-replace.ts'

const PRIOR = tradePriors()
const TRAITS = { crosslinkPercent: 8, gallonsPerDayPerFt3: null }
const TOWN = { freeChlorineMgL: 1, chloramineMgL: 0, ironMgL: 0, temperatureC: null }
const COSTS = { planned: 38_000, failure: 90_000, beadsShare: 0.1, beads: 90_000 }

function answer(parameters = PRIOR, water = TOWN, costs = COSTS, supply: string | null = null) {
  const result = whenToReplace(TRAITS, water, parameters, costs, 12, supply)
  if (!result.ok) throw new Error(result.reason)
  return result.value
}

describe('when to replace', () => {
  it('carries the doubt about life into a band around the curve, the age and the saving', () => {
    const value = answer()
    expect(value.best?.ageYears).toBeGreaterThan(value.bestLow ?? 99)
    expect(value.best?.ageYears).toBeLessThan(value.bestHigh ?? 0)
    for (const { costPerYear, low, high } of value.curve.slice(0, 30)) {
      expect(low).toBeLessThan(costPerYear)
      expect(high).toBeGreaterThan(costPerYear)
    }
    expect(value.savedAgainstRunToFailure.low).toBeLessThan(value.savedAgainstRunToFailure.mean)
    expect(value.savedAgainstRunToFailure.mean).toBeLessThan(value.savedAgainstRunToFailure.high)
    expect(value.savedAgainstRunToFailure.mean).toBeCloseTo(value.runToFailurePerYear - (value.best?.costPerYear ?? 0), 0)
  })

  it('without doubt has no band', () => {
    const certain = { ...PRIOR, version: 'certain', logCovariance: PRIOR.logCovariance.map(() => 0) }
    const value = answer(certain)
    for (const { costPerYear, low, high } of value.curve) expect(high - low).toBeLessThan(1e-6 * costPerYear)
    expect(value.bestLow).toBeCloseTo(value.bestHigh ?? Number.NaN, 6)
    expect(value.planShare).toBe(1)
  })

  it('comes earlier on a supply whose beds last less, and refuses costs that are none', () => {
    const slope = PRIOR.logMean.map(() => 0)
    const told = { ...PRIOR, version: 'told', supplies: { spread: 0.1, known: [{ supply: 'short', mean: -0.3, sd: 0.02, slope }] } }
    expect(answer(told, TOWN, COSTS, 'short').best?.ageYears).toBeLessThan((answer().best?.ageYears ?? 0) * 0.85)
    expect(answer(told).best?.ageYears).toBe(answer().best?.ageYears)
    expect(whenToReplace(TRAITS, TOWN, PRIOR, { ...COSTS, planned: -1 }, 12)).toMatchObject({ ok: false })
  })

  it('saves nothing where a failure costs no more than a plan', () => {
    const value = answer(PRIOR, TOWN, { planned: 38_000, failure: 38_000, beadsShare: 0, beads: 0 })
    expect([value.best, value.bestLow, value.planShare]).toEqual([null, null, 0])
    expect(value.savedAgainstRunToFailure.mean).toBe(0)
  })
})
