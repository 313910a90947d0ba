import type { Disinfectant } from '@almanac/records/disinfectant'
import { parseDay } from '@almanac/units/calendar/day-number'
import { type Refusal, refuse } from '@almanac/units/result'
import type { Saying } from './speaking.ts'
import type { WaterHistoryInput, WaterTest } from './water-types.ts'

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
export function readWater(input: WaterHistoryInput, asOf: number, saying: Saying): ReadWater | Refusal {
  const { say, day: writeDay } = saying
  const assumptions: string[] = []
  const periods: ReadPeriod[] = []
  for (const period of input.supplyPeriods) {
    const from = parseDay(period.fromDay)
    if (from === null) return refuse(say('no/period', { day: period.fromDay }))
    const bad =
      badAmount('what/disinfectant', period.disinfectantMgL, period.fromDay, saying) ??
      badAmount('what/iron', period.ironMgL, period.fromDay, saying) ??
      badHardness(period.hardnessGpg, period.fromDay, saying)
    if (bad !== null) return bad
    if (from > asOf) assumptions.push(say('announced', { day: writeDay(period.fromDay) }))
    periods.push({ ...period, from, temperatureC: plausibleTemperature(period.temperatureC, assumptions, saying) })
  }
  const tests: ReadTest[] = []
  for (const test of input.tests) {
    const day = parseDay(test.day)
    if (day === null) return refuse(say('no/test', { day: test.day }))
    const bad = badTest(test, saying)
    if (bad !== null) return bad
    if (day > asOf) assumptions.push(say('testLater', { day: writeDay(test.day) }))
    else if (test.point !== 'softened') tests.push(readTest(test, day, assumptions, saying))
  }
  const carbon: ReadStay[] = []
  const ironFilter: ReadStay[] = []
  for (const treatment of input.preTreatments) {
    if (treatment.kind === 'other') continue
    const from = treatment.fromDay === null ? Number.NEGATIVE_INFINITY : parseDay(treatment.fromDay)
    const to = treatment.toDay === null ? Number.POSITIVE_INFINITY : parseDay(treatment.toDay)
    if (from === null || to === null) return refuse(say('no/treatment'))
    if (to < from) {
      const [came = '', left = ''] = [treatment.fromDay ?? '', treatment.toDay ?? ''].map(writeDay)
      return refuse(say('no/treatmentTurned', { left, came }))
    }
    ;(treatment.kind === 'carbon' ? carbon : ironFilter).push({ from, to })
  }
  return { ok: true, periods: sorted(periods, (p) => p.from), tests: sorted(tests, (t) => t.day), carbon, ironFilter, assumptions }
}

function readTest(test: WaterTest, day: number, assumptions: string[], saying: Saying): ReadTest {
  return {
    day,
    raw: test.point === 'raw',
    freeMgL: test.freeChlorineMgL ?? null,
    totalMgL: test.totalChlorineMgL ?? null,
    hardnessGpg: test.hardnessGpg ?? null,
    ironMgL: test.ironMgL ?? null,
    temperatureC: plausibleTemperature(test.temperatureC, assumptions, saying),
  }
}

function badTest(test: WaterTest, saying: Saying): Refusal | null {
  return (
    badAmount('what/freeChlorine', test.freeChlorineMgL, test.day, saying) ??
    badAmount('what/totalChlorine', test.totalChlorineMgL, test.day, saying) ??
    badAmount('what/iron', test.ironMgL, test.day, saying) ??
    badHardness(test.hardnessGpg, test.day, saying)
  )
}

type Measured = 'what/disinfectant' | 'what/iron' | 'what/freeChlorine' | 'what/totalChlorine'

function badAmount(what: Measured, value: number | null | undefined, day: string, saying: Saying): Refusal | null {
  if (value === null || value === undefined || (value >= 0 && value <= IMPLAUSIBLE_MG_L)) return null
  const { say, day: writeDay, amount } = saying
  return refuse(say('no/amount', { what: say(what), day: writeDay(day), value: amount(value), most: amount(IMPLAUSIBLE_MG_L) }))
}

function badHardness(value: number | null | undefined, day: string, { say, day: writeDay, amount }: Saying): Refusal | null {
  if (value === null || value === undefined || (value >= 0 && value < 1000)) return null
  return refuse(say('no/hardness', { day: writeDay(day), value: amount(value) }))
}

function plausibleTemperature(value: number | null | undefined, assumptions: string[], { say, amount }: Saying): number | null {
  if (value === null || value === undefined) return null
  if (value >= 0 && value <= 60) return value
  assumptions.push(say('temperatureOut', { value: amount(value) }))
  return null
}

/** A sorted copy; most lists arrive in order, and then nothing is copied. */
function sorted<T>(items: T[], at: (item: T) => number): T[] {
  return items.length < 2 ? items : items.sort((a, b) => at(a) - at(b))
}
