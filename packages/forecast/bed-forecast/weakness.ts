import { type QuestionKey, worthAskingYears } from '@almanac/records/forecast-question'
import { DAYS_PER_YEAR } from '@almanac/units/calendar/day-number'
import type { ParameterValues } from '../priors/forecast-parameters.ts'
import { type BedClock, type BedDoubt, cleanYearsAt } from './bed-clock.ts'
import type { MeasurementGain, Weakness } from './bed-forecast-types.ts'
import type { ReadBed } from './read-input.ts'

/** Log ageing rate by which iron that nobody measured may be off on a private well; a common-practice guess, no source. */
const UNKNOWN_WELL_IRON_LOG_SD = 0.2

/** How many years of doubt each missing fact leaves in the due date; independent causes add as squares. */
export function weakness(
  bed: ReadBed,
  doubt: BedDoubt,
  clock: BedClock,
  values: ParameterValues,
  lifeYears: number,
  chanceAlreadyFailed: number,
): Weakness {
  const byCause: MeasurementGain[] = []
  const add = (key: QuestionKey, years: number) => {
    if (years > 0.01) byCause.push({ key, years })
  }
  add('beginning', beginningSd(doubt, clock))
  const now = bed.segments.at(-1)
  const waterLogSd = doubt.doseLogSd * values.chlorineExponent
  if (waterLogSd > 0) add(now?.disinfectantOrigin === 'assumed' ? 'disinfectant' : 'water-test', waterLogSd * lifeYears)
  if (now?.ironOrigin === 'assumed' && now.freeChlorineMgL + now.chloramineMgL === 0 && !now.carbonAhead)
    add('iron', UNKNOWN_WELL_IRON_LOG_SD * lifeYears)
  if (!bed.crosslinkKnown) add('crosslink', (values.crosslinkEffect / 2) * lifeYears)
  add('last-seen', (chanceAlreadyFailed * (bed.asOf - bed.lastSeen)) / DAYS_PER_YEAR)
  byCause.sort((a, b) => b.years - a.years)
  const first = byCause[0]
  return {
    years: Math.sqrt(byCause.reduce((sum, cause) => sum + cause.years ** 2, 0)),
    question: first === undefined || first.years < worthAskingYears ? null : first.key,
    byCause,
  }
}

/** Standard deviation of the beginning in years, after what its survival to the day last seen says. */
function beginningSd(doubt: BedDoubt, clock: BedClock): number {
  const perBeginning = clock.weight.length / doubt.beginnings.length
  let mean = 0
  let square = 0
  doubt.beginnings.forEach((node, m) => {
    let weight = 0
    for (let j = 0; j < perBeginning; j++) weight += clock.weight[m * perBeginning + j] ?? 0
    mean += weight * node.x
    square += weight * node.x ** 2
  })
  return Math.sqrt(Math.max(0, square - mean ** 2)) / DAYS_PER_YEAR
}

/** Day on which a bed begun at `begin` reaches `cleanYears` of wear. */
export function dayAtCleanYears(clock: BedClock, begin: number, cleanYears: number): number {
  const goal = cleanYearsAt(clock, begin) + cleanYears
  let g = 0
  while (g < clock.from.length - 1 && (clock.reached[g + 1] ?? 0) < goal) g++
  return (clock.from[g] ?? 0) + (goal - (clock.reached[g] ?? 0)) / (clock.rate[g] ?? 1)
}
