import type { ReadPeriod, ReadStay, ReadTest, ReadWater } from './read-water.ts'
import type { Saying } from './speaking.ts'
import type { ValueOrigin } from './water-types.ts'

/** Residuals assumed where nobody wrote them down, mg/L (ForecastParameters.assumedWater). */
export interface AssumedWater {
  readonly freeChlorineMgL: number
  readonly chloramineMgL: number
  readonly unknownSupplyFreeChlorineMgL: number
  readonly ironMgL: number
}

/** What is taken where nobody wrote it down, and how it is said. */
export type Tracing = { readonly assumed: AssumedWater; readonly saying: Saying }

export interface DisinfectantReading {
  readonly freeMgL: number
  readonly chloramineMgL: number
  readonly origin: ValueOrigin
  readonly why: string
}

export function standsAt(stays: readonly ReadStay[], day: number): boolean {
  for (const stay of stays) if (day >= stay.from && day < stay.to) return true
  return false
}

/** The supply period in force; before the first one, the first. */
export function periodAt(periods: readonly ReadPeriod[], day: number): ReadPeriod | null {
  let found: ReadPeriod | null = periods[0] ?? null
  for (const period of periods) if (period.from <= day) found = period
  return found
}

/** Free chlorine and chloramine at the softener inlet on a day: a test that still holds outranks the supply, carbon removes the disinfectant. */
export function disinfectantAt(water: ReadWater, day: number, by: Tracing): DisinfectantReading {
  const carbon = standsAt(water.carbon, day)
  const inlet = latestDisinfectantTest(water, day, false, carbon)
  if (inlet !== null) return fromTest(water, inlet, by, 'inlet')
  const before = rawAt(water, day, by)
  if (!carbon) return before
  return { freeMgL: 0, chloramineMgL: 0, origin: before.origin, why: by.saying.say('water/carbon', { before: before.why }) }
}

function rawAt(water: ReadWater, day: number, by: Tracing): DisinfectantReading {
  const raw = latestDisinfectantTest(water, day, true, false)
  if (raw !== null) return fromTest(water, raw, by, 'raw')
  return fromSupply(water.periods, day, by)
}

/** The newest test up to `day` that still holds: no other disinfectant since, and for the inlet the same carbon ahead. Without any supply record a later test serves backwards. */
function latestDisinfectantTest(water: ReadWater, day: number, raw: boolean, carbon: boolean): ReadTest | null {
  let found: ReadTest | null = null
  for (const test of water.tests) {
    if (test.raw !== raw || (test.freeMgL === null && test.totalMgL === null)) continue
    if (!raw && standsAt(water.carbon, test.day) !== carbon) continue
    if (test.day > day) {
      if (found !== null || water.periods.length > 0) break
      return test
    }
    if (sameDisinfectantBetween(water.periods, test.day, day)) found = test
  }
  return found
}

function sameDisinfectantBetween(periods: readonly ReadPeriod[], from: number, to: number): boolean {
  const before = periodAt(periods, from)
  for (const period of periods) {
    if (period.from > from && period.from <= to && period.disinfectant !== before?.disinfectant) return false
  }
  return true
}

function fromTest(water: ReadWater, test: ReadTest, by: Tracing, where: 'inlet' | 'raw'): DisinfectantReading {
  const { freeMgL: free, totalMgL: total } = test
  const { say, amount } = by.saying
  if (free !== null && total !== null) {
    // Combined chlorine is total less free; a small negative difference is the noise of two readings.
    const combined = Math.max(0, total - free)
    return measured(free, combined, say(`water/${where}Both`, { free: amount(free), total: amount(total) }))
  }
  const supply = fromSupply(water.periods, test.day, by)
  if (free !== null) {
    return measured(free, supply.chloramineMgL, say(`water/${where}Free`, { amount: amount(free) }))
  }
  const all = total ?? 0
  return supply.chloramineMgL > 0
    ? measured(0, all, say(`water/${where}Combined`, { amount: amount(all) }))
    : measured(all, 0, say(`water/${where}Total`, { amount: amount(all) }))
}

function measured(freeMgL: number, chloramineMgL: number, why: string): DisinfectantReading {
  return { freeMgL, chloramineMgL, origin: 'measured', why }
}

function fromSupply(periods: readonly ReadPeriod[], day: number, { assumed, saying }: Tracing): DisinfectantReading {
  const { say, amount } = saying
  const period = periodAt(periods, day)
  if (period === null || period.disinfectant === null) {
    const free = assumed.unknownSupplyFreeChlorineMgL
    return { freeMgL: free, chloramineMgL: 0, origin: 'assumed', why: say('water/unknown', { amount: amount(free) }) }
  }
  if (period.disinfectant === 'none') return { freeMgL: 0, chloramineMgL: 0, origin: 'supply', why: say('water/none') }
  const origin: ValueOrigin = period.disinfectantMgL === null ? 'assumed' : 'supply'
  if (period.disinfectant === 'free-chlorine') {
    const free = period.disinfectantMgL ?? assumed.freeChlorineMgL
    return {
      freeMgL: free,
      chloramineMgL: 0,
      origin,
      why: say(origin === 'assumed' ? 'water/freeAssumed' : 'water/free', { amount: amount(free) }),
    }
  }
  // A town that turned to chloramine on a recorded day used something else before: free chlorine, nearly always.
  if (period.from > day) {
    const free = assumed.freeChlorineMgL
    return { freeMgL: free, chloramineMgL: 0, origin: 'assumed', why: say('water/before', { amount: amount(free) }) }
  }
  const chloramine = period.disinfectantMgL ?? assumed.chloramineMgL
  return {
    freeMgL: 0,
    chloramineMgL: chloramine,
    origin,
    why: say(origin === 'assumed' ? 'water/chloramineAssumed' : 'water/chloramine', { amount: amount(chloramine) }),
  }
}
