import { ok, type Result, refuse } from '@almanac/units/result'
import { LIFE_FAMILIES, type LifeFamilyName } from '../lifetime/life-family.ts'
import type { LifeRecord } from '../lifetime/life-record.ts'
import { fitLifetime, type LifeFit } from './fit-lifetime.ts'

export interface WeighedFit {
  readonly fit: LifeFit
  /** Akaike weight: e^(−ΔAIC/2), scaled to add up to one. */
  readonly share: number
}

export interface FamilyChoice {
  /** Largest share first. */
  readonly fits: readonly WeighedFit[]
  /** Chance of lasting longer than t for given covariates, averaged over the families by their shares. */
  survival(t: number, covariates?: ArrayLike<number>): number
}

/**
 * Fits all three families and weighs them by Akaike's criterion (Burnham and Anderson 2002); averaged rather than picked, since records are often too few to tell
 * them apart where it matters, in the tails. Families that do not settle are left out and named.
 */
export function chooseFamily(records: readonly LifeRecord[], covariates = 0): Result<FamilyChoice> {
  const fits: LifeFit[] = []
  const missing: string[] = []
  for (const family of Object.keys(LIFE_FAMILIES) as LifeFamilyName[]) {
    const fit = fitLifetime(records, family, covariates)
    if (fit.ok) fits.push(fit.value)
    else missing.push(fit.reason)
  }
  const least = Math.min(...fits.map((fit) => fit.aic))
  if (fits.length === 0) return refuse(missing[0] ?? 'No family could be fitted.')
  const total = fits.reduce((sum, fit) => sum + Math.exp((least - fit.aic) / 2), 0)
  const weighed = fits.map((fit) => ({ fit, share: Math.exp((least - fit.aic) / 2) / total })).sort((a, b) => b.share - a.share)
  return ok(
    { fits: weighed, survival: (t, x) => weighed.reduce((sum, { fit, share }) => sum + share * fittedSurvival(fit, t, x), 0) },
    { missing },
  )
}

const out = new Float64Array(3)

/** Chance under one fit of lasting longer than t > 0. */
export function fittedSurvival(fit: LifeFit, t: number, covariates: ArrayLike<number> = []): number {
  if (t <= 0) return 1
  let location = fit.coefficients[0] as number
  for (let j = 1; j < fit.coefficients.length; j++) location += (fit.coefficients[j] as number) * (covariates[j - 1] ?? Number.NaN)
  LIFE_FAMILIES[fit.family].logSurvival((Math.log(t) - location) / fit.scale, out)
  return Math.exp(out[0] as number)
}
