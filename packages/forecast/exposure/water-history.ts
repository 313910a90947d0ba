import { type IsoDay, isoDay, parseDay } from '@almanac/units/calendar/day-number'
import { ok, type Refusal, type Result, refuse } from '@almanac/units/result'
import { type ReadWater, readWater } from './read-water.ts'
import { type AssumedWater, disinfectantAt, periodAt, standsAt, type Tracing } from './reading-at.ts'
import { type ForecastSpeaking, type Saying, sayingOf } from './speaking.ts'
import type { ExposureSegment, ValueOrigin, WaterHistoryInput } from './water-types.ts'

/** An exposure segment with its day numbers; to is Infinity for the one that goes on. */
export interface TracedSegment extends ExposureSegment {
  readonly from: number
  readonly to: number
  /** The first half of `why`. */
  readonly disinfectantWhy: string
}

export interface TracedWater {
  readonly ok: true
  readonly segments: readonly TracedSegment[]
  readonly assumptions: readonly string[]
  readonly missing: readonly string[]
}

/**
 * What reaches a bed from `beginDay` on, as steps: measured values outrank the supply's, carbon ahead removes disinfectant, an iron filter iron.
 * The last step goes on. Tests after `asOfDay` are not used. Refuses bad dates and negative amounts.
 */
export function waterHistory(
  input: WaterHistoryInput,
  beginDay: IsoDay,
  asOfDay: IsoDay,
  assumed: AssumedWater,
  speaking?: ForecastSpeaking,
): Result<readonly ExposureSegment[]> {
  const saying = sayingOf(speaking)
  const begin = parseDay(beginDay)
  const asOf = parseDay(asOfDay)
  if (begin === null || asOf === null) return refuse(saying.say('no/firstDay'))
  const traced = traceWater(input, begin, asOf, assumed, saying)
  if (!traced.ok) return traced
  return ok(
    traced.segments.map(({ from: _from, to: _to, disinfectantWhy: _why, ...segment }) => segment),
    { assumptions: [...traced.assumptions], missing: [...traced.missing] },
  )
}

/** The same on day numbers, for the forecast's inner work. */
export function traceWater(
  input: WaterHistoryInput,
  begin: number,
  asOf: number,
  assumed: AssumedWater,
  saying: Saying,
): TracedWater | Refusal {
  const water = readWater(input, asOf, saying)
  if (!water.ok) return water
  const segments: TracedSegment[] = []
  const starts = changeDays(water, begin)
  for (let i = 0; i < starts.length; i++) {
    const from = starts[i] ?? begin
    const next = segmentAt(water, from, starts[i + 1] ?? Number.POSITIVE_INFINITY, { assumed, saying })
    const last = segments.at(-1)
    if (last !== undefined && sameWater(last, next)) segments[segments.length - 1] = { ...last, to: next.to, toDay: next.toDay }
    else segments.push(next)
  }
  return { ok: true, segments, ...notes(water, segments, saying) }
}

function changeDays(water: ReadWater, begin: number): number[] {
  const days = [begin]
  const add = (day: number) => {
    if (day > begin && Number.isFinite(day) && !days.includes(day)) days.push(day)
  }
  for (const period of water.periods) add(period.from)
  for (const test of water.tests) add(test.day)
  for (const stay of water.carbon) addStay(add, stay)
  for (const stay of water.ironFilter) addStay(add, stay)
  return days.length > 2 ? days.sort((a, b) => a - b) : days
}

function addStay(add: (day: number) => void, stay: { from: number; to: number }): void {
  add(stay.from)
  add(stay.to)
}

function segmentAt(water: ReadWater, from: number, to: number, by: Tracing): TracedSegment {
  const disinfectant = disinfectantAt(water, from, by)
  const iron = ironAt(water, from, by)
  const period = periodAt(water.periods, from)
  return {
    from,
    to,
    fromDay: isoDay(from),
    toDay: Number.isFinite(to) ? isoDay(to) : null,
    freeChlorineMgL: disinfectant.freeMgL,
    chloramineMgL: disinfectant.chloramineMgL,
    ironMgL: iron.mgL,
    hardnessGpg: testValue(water, from, 'hardnessGpg') ?? period?.hardnessGpg ?? null,
    temperatureC: period?.temperatureC ?? testValue(water, from, 'temperatureC'),
    disinfectantOrigin: disinfectant.origin,
    ironOrigin: iron.origin,
    carbonAhead: standsAt(water.carbon, from),
    disinfectantWhy: disinfectant.why,
    why: iron.why === '' ? disinfectant.why : by.saying.say('water/both', { disinfectant: disinfectant.why, iron: iron.why }),
  }
}

function ironAt(water: ReadWater, day: number, { assumed, saying }: Tracing): { mgL: number; origin: ValueOrigin; why: string } {
  const filtered = standsAt(water.ironFilter, day)
  let found: { mgL: number; raw: boolean } | null = null
  for (const test of water.tests) {
    if (test.ironMgL === null) continue
    // Iron belongs to the source and changes little, so the first test also serves the years before it; an inlet value holds for the filter it was taken behind.
    if (!test.raw && standsAt(water.ironFilter, test.day) !== filtered) continue
    if (test.day <= day || found === null) found = { mgL: test.ironMgL, raw: test.raw }
  }
  const period = periodAt(water.periods, day)
  if (found !== null && !(filtered && found.raw))
    return { mgL: found.mgL, origin: 'measured', why: saying.say('water/ironMeasured', { amount: saying.amount(found.mgL) }) }
  if (filtered) return { mgL: 0, origin: found === null ? 'assumed' : 'measured', why: saying.say('water/ironFilter') }
  if (period?.ironMgL !== null && period?.ironMgL !== undefined) {
    const amount = saying.amount(period.ironMgL)
    return { mgL: period.ironMgL, origin: 'supply', why: period.ironMgL > 0 ? saying.say('water/ironSupply', { amount }) : '' }
  }
  return { mgL: assumed.ironMgL, origin: 'assumed', why: '' }
}

function testValue(water: ReadWater, day: number, key: 'hardnessGpg' | 'temperatureC'): number | null {
  let found: number | null = null
  for (const test of water.tests) {
    const value = test[key]
    if (value !== null && (test.day <= day || found === null)) found = value
  }
  return found
}

function sameWater(a: TracedSegment, b: TracedSegment): boolean {
  return (
    a.freeChlorineMgL === b.freeChlorineMgL &&
    a.chloramineMgL === b.chloramineMgL &&
    a.ironMgL === b.ironMgL &&
    a.temperatureC === b.temperatureC &&
    a.hardnessGpg === b.hardnessGpg &&
    a.why === b.why
  )
}

function notes(water: ReadWater, segments: readonly TracedSegment[], { say, day }: Saying): { assumptions: string[]; missing: string[] } {
  const assumptions = [...water.assumptions]
  const missing: string[] = []
  if (water.tests.length === 0) missing.push(say('neverTested'))
  if (water.periods.length === 0) missing.push(say('noSupply'))
  const guess = segments.find((s) => s.disinfectantOrigin === 'assumed')
  if (guess !== undefined) {
    assumptions.push(say('disinfectantFrom', { day: day(guess.fromDay), why: guess.disinfectantWhy }))
    missing.push(say('disinfectantGaps'))
  }
  if (segments.some((s) => s.ironOrigin === 'assumed')) assumptions.push(say('noIron'))
  if (segments.some((s) => s.carbonAhead)) assumptions.push(say('carbonRemoves'))
  return { assumptions, missing }
}
