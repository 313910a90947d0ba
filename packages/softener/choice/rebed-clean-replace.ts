import type { BeadCondition } from '@almanac/records/bead-condition'
import { ok, type Result, refuse } from '@almanac/units/result'
import { FROM_MEMORY } from '@almanac/units/sourced'
import { type CostOption, cheapestOf, judgeCosts } from './cheapest.ts'
import { thinned, usableMinor, usableYears } from './spread.ts'
import { NO_REBED_PRICE } from './which-resin.ts'

export const WAYS = ['rebed', 'clean', 'replace'] as const
export type Way = (typeof WAYS)[number]

/** Lives of a whole unit, its valve and tank, years, equally likely; from memory, unverified. */
export const UNIT_LIVES_YEARS: readonly number[] = [8, 11, 13, 14, 16, 17, 18, 20, 22, 26]
/** Years a cleaning wins where iron has fouled the bed, equally likely: often none, seldom many; from memory, unverified. */
export const CLEANED_YEARS: readonly number[] = [0, 0, 0.5, 1, 1, 1.5, 2, 2, 3, 4]
/** Years it wins where nothing shows that iron is the fault: chlorine has cut the beads, and that is not washed out; from memory, unverified. */
export const CLEANED_IN_VAIN_YEARS: readonly number[] = [0, 0, 0, 0, 0, 0, 0, 0, 0.5, 1]
/** Iron from which it may be the fault, mg/L (40 CFR 143.3, secondary standard). */
const FOULING_IRON_MG_L = 0.3
/** What a unit older than all those lives still has, years; from memory, unverified. */
const OLD_UNIT_YEARS = 2

export type WayInput = {
  /** Lives of a new bed on this water, years, equally likely. */
  livesYears: readonly number[]
  rebedMinor: number | null
  cleanMinor: number | null
  /** A new unit, put in, with its first bed. */
  unitMinor: number | null
  unitAgeYears: number | null
  ironMgL: number | null
  /** What the beads looked like, where somebody saw them. */
  beads?: BeadCondition | null
}

export type WayChoice = { options: CostOption<Way>[]; cheapest: Way | null; ironMayBeTheFault: boolean }

const A_SIDE = 10

/**
 * Cost a year of three ways: a new bed in this unit, which lasts as long as the bed or the unit, whichever ends first; a cleaning, then the new bed when its
 * years are over; a new unit over its whole life, with the beds it will need. Lives are equally likely figures, each with each.
 */
export function rebedCleanReplace(input: WayInput): Result<WayChoice> {
  const lives = usableYears(input.livesYears)
  if (lives === null)
    return refuse('How long a new bed lasts on this water is not known, so we can’t calculate its yearly cost. Fix the bed’s record first.')
  const { rebedMinor: rebed, cleanMinor: clean, unitMinor: unit, unitAgeYears: age } = input
  const wrong = [rebed, clean, unit].find((price) => price !== null && !usableMinor(price))
  if (wrong !== undefined) return refuse('A price must be an amount of zero or more; check what was entered.')
  const beadsGone = input.beads === 'some-soft' || input.beads === 'mushy' || input.beads === 'broken'
  const ironMayBeTheFault = !beadsGone && ((input.ironMgL ?? 0) > FOULING_IRON_MG_L || input.beads === 'iron-fouled')
  const wins = ironMayBeTheFault ? CLEANED_YEARS : CLEANED_IN_VAIN_YEARS
  const left = unitYearsLeft(age)
  const costs: number[][] = []
  for (const life of thinned(lives, A_SIDE)) {
    for (const unitLeft of left) {
      const used = Math.min(life, unitLeft)
      for (const whole of UNIT_LIVES_YEARS) {
        const beds = Math.max(0, Math.ceil(whole / life - 1e-9) - 1)
        for (const won of wins)
          costs.push([div(rebed, used), div(add(clean, rebed), won + used), div(add(unit, times(rebed, beds)), whole)])
      }
    }
  }
  const noRebed = rebed === null ? [NO_REBED_PRICE] : []
  const unpriced = {
    rebed: noRebed,
    clean: [...noRebed, ...(clean === null ? ['the price of a cleaning (enter it above)'] : [])],
    replace: [...noRebed, ...(unit === null ? ['the price of a new unit, installed (enter it above)'] : [])],
  }
  const options = judgeCosts(WAYS, unpriced, costs)
  return ok(
    { options, cheapest: cheapestOf(options)?.key ?? null, ironMayBeTheFault },
    {
      assumptions: [
        'A unit lasts 8 to 26 years, half of them 17 (from memory).',
        ironMayBeTheFault
          ? 'A cleaning gains nothing to four years where iron has fouled the bed (from memory).'
          : 'A cleaning gains hardly anything here: nothing points to iron, and cleaning can’t repair chlorine damage (from memory).',
        ...(age === null ? ['The unit’s age isn’t known, so we assume half its life is over.'] : []),
      ],
      missing: [...(age === null ? ['when the unit was installed'] : []), ...(input.ironMgL === null ? ['iron in the raw water'] : [])],
      sources: [FROM_MEMORY],
    },
  )
}

/** What the unit still has, equally likely: the lives it may yet have less its age. */
export function unitYearsLeft(ageYears: number | null): number[] {
  if (ageYears === null || !(ageYears >= 0)) return UNIT_LIVES_YEARS.map((life) => life / 2)
  const left = UNIT_LIVES_YEARS.map((life) => life - ageYears).filter((years) => years > 0.5)
  return left.length > 0 ? left : [OLD_UNIT_YEARS]
}

const add = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : a + b)
const times = (a: number | null, count: number): number | null => (a === null ? null : a * count)
const div = (a: number | null, years: number): number => (a === null ? Number.NaN : a / years)
