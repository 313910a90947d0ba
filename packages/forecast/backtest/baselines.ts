import { DAYS_PER_YEAR, type IsoDay, parseDay } from '@almanac/units/calendar/day-number'
import type { BedRecord } from '../fit/bed-record.ts'
import { fitLifetime } from '../fit/fit-lifetime.ts'
import { readRecord } from '../fit/read-record.ts'
import { CALLED_AFTER_DAYS } from '../fit/record-ways.ts'
import { kaplanMeier, survivalAt } from '../lifetime/kaplan-meier.ts'
import type { LifeRecord } from '../lifetime/life-record.ts'
import { conditionalFailureChance } from '../lifetime/weibull.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'

/** Chance that a bed seen working at one age has failed by another, in years. */
export type AgeRule = (seenAge: number, age: number) => number

/**
 * Ages as known on a day, beginnings at their middle: what rules that know nothing but age may learn from. A customer's bed in service counts as working, since nobody
 * called, and one that failed as failed within the time in which households notice.
 */
export function knownLives(records: readonly BedRecord[], origin: IsoDay, parameters: ForecastParameters): LifeRecord[] {
  const lives: LifeRecord[] = []
  const asOf = parseDay(origin) ?? Number.NaN
  for (const record of records) {
    const read = readRecord(record, origin, parameters)
    if (!read.ok) continue
    const begin = read.beginnings.reduce((sum, node) => sum + node.x * node.weight, 0)
    const age = (day: number) => Math.max(0, (day - begin) / DAYS_PER_YEAR)
    const isOpen = read.upper === Number.POSITIVE_INFINITY
    const lower = record.customerCalls === true ? knownUntil(read.lower, isOpen ? asOf : read.upper - CALLED_AFTER_DAYS) : read.lower
    if (lower <= begin) continue
    const entry = read.entry === Number.NEGATIVE_INFINITY ? 0 : Math.min(age(read.entry), age(lower))
    lives.push({ entry, lower: age(lower), upper: isOpen ? read.upper : age(read.upper) })
  }
  return lives
}

/** The later of a bed's last look and the time in which a failure would have been noticed. */
function knownUntil(seen: number, day: number): number {
  return Math.max(seen, day - CALLED_AFTER_DAYS)
}

/** One Weibull for all beds by their age; null when it cannot be fitted yet. */
export function ageOnlyWeibull(lives: readonly LifeRecord[]): AgeRule | null {
  const fit = fitLifetime(lives, 'weibull')
  if (!fit.ok) return null
  const life = { shape: 1 / fit.value.scale, scale: Math.exp(fit.value.coefficients[0] as number) }
  return (seen, age) => conditionalFailureChance(life, seen, Math.max(0, age - seen))
}

/** Kaplan–Meier by age; failures between two visits at their middle. */
export function kaplanMeierRule(lives: readonly LifeRecord[]): AgeRule {
  const steps = kaplanMeier(
    lives.map(({ entry = 0, lower, upper }) => ({
      entry,
      age: upper === Number.POSITIVE_INFINITY ? lower : (lower + upper) / 2,
      failed: upper !== Number.POSITIVE_INFINITY,
    })),
  )
  return (seen, age) => {
    const before = survivalAt(steps, seen)
    // Older than any bed that failed: the curve has nothing left to say, and nothing more fails by it.
    return before > 0 ? 1 - survivalAt(steps, age) / before : 1
  }
}

/** "A bed lasts so many years": failed once that old, not before. */
export function fixedAge(years: number): AgeRule {
  return (_seen, age) => (age >= years ? 1 : 0)
}
