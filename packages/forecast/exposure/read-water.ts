import type { Disinfectant } from '@almanac/records/disinfectant'
import { parseDay } from '@almanac/units/calendar/day-number'
import { type Refusal, refuse } from '@almanac/units/result'
import type { WaterHistoryInput, WaterTest } from './water-types.ts'
import type { WriteDay } from './write-day.ts'

export interface ReadPeriod {
  readonly from: number
  readonly disinfectant: Disinfectant | null
  readonly disinfectantMgL: number | null
  readonly hardnessGpg: number | null
  readonly ironMgL: number | null
  readonly temperatureC: number | null
}

export interface ReadTest {
  readonly day: number
  readonly raw: boolean
  readonly freeMgL: number | null
  readonly totalMgL: number | null
  readonly hardnessGpg: number | null
  readonly ironMgL: number | null
  readonly temperatureC: number | null
}

export interface ReadStay {
  readonly from: number
  readonly to: number
}

/** The written water records as day numbers, sorted, with what could not serve set aside in notes. */
export interface ReadWater {
  readonly ok: true
  readonly periods: readonly ReadPeriod[]
  readonly tests: readonly ReadTest[]
  readonly carbon: readonly ReadStay[]
  readonly ironFilter: readonly ReadStay[]
  readonly assumptions: string[]
}

/** Beyond this a reading in mg/L is a slip of unit or decimal point, not water that people drink. */
const IMPLAUSIBLE_MG_L = 100

/** Checks and sorts water records; tests after `asOf` are left out. A bad day or a negative amount is refused with the sentence to show. */
export function readWater(input: WaterHistoryInput, asOf: number, writeDay: WriteDay): ReadWater | Refusal {
  const assumptions: string[] = []
  const periods: ReadPeriod[] = []
  for (const period of input.supplyPeriods) {
    const from = parseDay(period.fromDay)
    if (from === null) return refuse(`The supply period dated “${period.fromDay}” has no real date. Correct its date.`)
    const bad =
      badAmount('disinfectant', period.disinfectantMgL, period.fromDay, writeDay) ??
      badAmount('iron', period.ironMgL, period.fromDay, writeDay) ??
      badHardness(period.hardnessGpg, period.fromDay, writeDay)
    if (bad !== null) return bad
    if (from > asOf) assumptions.push(`We assume the supply’s change announced for ${writeDay(period.fromDay)} will happen.`)
    periods.push({ ...period, from, temperatureC: plausibleTemperature(period.temperatureC, assumptions) })
  }
  const tests: ReadTest[] = []
  for (const test of input.tests) {
    const day = parseDay(test.day)
    if (day === null) return refuse(`The water test dated “${test.day}” has no real date. Correct the date of that test.`)
    const bad = badTest(test, writeDay)
    if (bad !== null) return bad
    if (day > asOf) assumptions.push(`The water test of ${writeDay(test.day)} is after the date of this forecast and is left out.`)
    else if (test.point !== 'softened') tests.push(readTest(test, day, assumptions))
  }
  const carbon: ReadStay[] = []
  const ironFilter: ReadStay[] = []
  for (const treatment of input.preTreatments) {
    if (treatment.kind === 'other') continue
    const from = treatment.fromDay === null ? Number.NEGATIVE_INFINITY : parseDay(treatment.fromDay)
    const to = treatment.toDay === null ? Number.POSITIVE_INFINITY : parseDay(treatment.toDay)
    if (from === null || to === null) return refuse('A pre-treatment unit has a date that isn’t real. Correct its dates.')
    if (to < from) {
      const [came, left] = [treatment.fromDay ?? '', treatment.toDay ?? ''].map(writeDay)
      return refuse(`Pre-treatment was removed on ${left}, before it came on ${came}. Correct one of the dates.`)
    }
    ;(treatment.kind === 'carbon' ? carbon : ironFilter).push({ from, to })
  }
  return { ok: true, periods: sorted(periods, (p) => p.from), tests: sorted(tests, (t) => t.day), carbon, ironFilter, assumptions }
}

function readTest(test: WaterTest, day: number, assumptions: string[]): ReadTest {
  return {
    day,
    raw: test.point === 'raw',
    freeMgL: test.freeChlorineMgL ?? null,
    totalMgL: test.totalChlorineMgL ?? null,
    hardnessGpg: test.hardnessGpg ?? null,
    ironMgL: test.ironMgL ?? null,
    temperatureC: plausibleTemperature(test.temperatureC, assumptions),
  }
}

function badTest(test: WaterTest, writeDay: WriteDay): Refusal | null {
  return (
    badAmount('free chlorine', test.freeChlorineMgL, test.day, writeDay) ??
    badAmount('total chlorine', test.totalChlorineMgL, test.day, writeDay) ??
    badAmount('iron', test.ironMgL, test.day, writeDay) ??
    badHardness(test.hardnessGpg, test.day, writeDay)
  )
}

function badAmount(what: string, value: number | null | undefined, day: string, writeDay: WriteDay): Refusal | null {
  if (value === null || value === undefined || (value >= 0 && value <= IMPLAUSIBLE_MG_L)) return null
  return refuse(
    `The ${what} of ${writeDay(day)} reads ${value} mg/L; it must be between 0 and ${IMPLAUSIBLE_MG_L}. Correct that value or leave it blank.`,
  )
}

function badHardness(value: number | null | undefined, day: string, writeDay: WriteDay): Refusal | null {
  if (value === null || value === undefined || (value >= 0 && value < 1000)) return null
  return refuse(
    `The hardness of ${writeDay(day)} reads ${value} gpg; it must be between 0 and 1,000. Correct that value or leave it blank.`,
  )
}

function plausibleTemperature(value: number | null | undefined, assumptions: string[]): number | null {
  if (value === null || value === undefined) return null
  if (value >= 0 && value <= 60) return value
  assumptions.push(`A water temperature of ${value} °C can’t be right and is left out.`)
  return null
}

/** A sorted copy; most lists arrive in order, and then nothing is copied. */
function sorted<T>(items: T[], at: (item: T) => number): T[] {
  return items.length < 2 ? items : items.sort((a, b) => at(a) - at(b))
}
