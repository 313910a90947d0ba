import { isoDay, parseDay } from '@almanac/units/calendar/day-number'
import { describe, expect, it } from 'vitest'
import { forecastBed } from '../bed-forecast/forecast-bed.ts'
import { seeded } from '../numeric/seeded.ts'
import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import { asCurrent, TRADE_PRIORS, tradePriors } from '../priors/trade-priors.ts'
import type { BedRecord, RecordedEnd } from './bed-record.ts'
import { fitBedRecords } from './fit-bed-records.ts'
import { likelihoodOf } from './plain-likelihood.ts'
import { readRecord } from './read-record.ts'
import { wearTable } from './wear-table.ts'

const PRIOR = tradePriors()
const AS_OF_DAY = '2026-01-01'
const AS_OF = parseDay(AS_OF_DAY) as number
const WATER: BedRecord['water'] = {
  supplyPeriods: [],
  tests: [{ day: '1980-01-01', point: 'softener-inlet', freeChlorineMgL: 0, totalChlorineMgL: 0, ironMgL: 0 }],
  preTreatments: [],
}

function bed(beganDay: string, lastSeenDay: string | null, end: RecordedEnd | null = null): BedRecord {
  return {
    ...{ beginning: { earliestDay: beganDay, latestDay: beganDay }, firstSeenDay: null, lastSeenDay, end, customerCalls: true },
    ...{ crosslinkPercent: 8, resinVolumeFt3: null, gallonsPerDay: null, water: WATER },
  }
}

/** Survival by hand at the trade's middle figures: Weibull 3 with a median of 13.5 years on clean water. */
const survival = (beganDay: string, day: number) => Math.exp(-Math.LN2 * ((day - (parseDay(beganDay) as number)) / 365.2425 / 13.5) ** 3)

function likelihood(record: BedRecord): number {
  const read = readRecord(record, AS_OF_DAY, PRIOR)
  if (!read.ok) throw new Error(read.reason)
  return Math.exp(likelihoodOf(wearTable([read], [null]), 'weibull')(PRIOR.logMean))
}
const calls = 0.8
/** Nobody took it out for another reason: one in a hundred a year. */
const stayed = (fromDay: string, day: number) => Math.exp(-0.01 * ((day - (parseDay(fromDay) as number)) / 365.2425))

describe('what a record says, by how it arose (terms of docs/decisions/how-records-arise.md, by hand)', () => {
  it('of a bed nobody called about: q·S(half a year’s half ago) + (1 − q)·S(last seen)', () => {
    const expected = calls * survival('2010-01-01', AS_OF - 92) + (1 - calls) * survival('2010-01-01', parseDay('2018-01-01') as number)
    expect(likelihood(bed('2010-01-01', '2018-01-01'))).toBeCloseTo(expected * stayed('2010-01-01', AS_OF), 8)
  })

  it('of a bed looked at last month: S(then), whoever would have called', () => {
    const seen = parseDay('2025-12-01') as number
    expect(likelihood(bed('2010-01-01', '2025-12-01'))).toBeCloseTo(survival('2010-01-01', seen) * stayed('2010-01-01', AS_OF), 8)
  })

  it('of a bed whose household called: q times the failures of the half year before, a year', () => {
    const out = parseDay('2022-03-01') as number
    const end: RecordedEnd = { earliestDay: '2015-01-01', latestDay: '2022-03-01', cause: 'failed', found: 'call' }
    const expected = (calls * (survival('2010-01-01', out - 183) - survival('2010-01-01', out))) / (183 / 365.2425)
    expect(likelihood(bed('2010-01-01', '2015-01-01', end))).toBeCloseTo(expected * stayed('2010-01-01', out), 8)
  })

  it('of a bed found failed at a visit: most have failed long before, of those that call only those of late', () => {
    const out = parseDay('2022-03-01') as number
    const end: RecordedEnd = { earliestDay: '2015-01-01', latestDay: '2022-03-01', cause: 'failed', found: 'visit' }
    const late = survival('2010-01-01', out - 183) - survival('2010-01-01', out)
    const since = survival('2010-01-01', parseDay('2015-01-01') as number) - survival('2010-01-01', out)
    expect(likelihood(bed('2010-01-01', '2015-01-01', end))).toBeCloseTo(
      ((calls / 2) * late + (1 - calls) * since) * stayed('2010-01-01', out),
      8,
    )
  })

  it('of a bed taken out for a reason nobody knows: failed or, at the rate of the firm’s other removals, working', () => {
    const out = parseDay('2022-03-01') as number
    const end = { earliestDay: '2021-12-01', latestDay: '2022-03-01' }
    const failed = likelihood(bed('2010-01-01', '2021-12-01', { ...end, cause: 'failed' }))
    const removed = 0.01 * survival('2010-01-01', out) * stayed('2010-01-01', out)
    expect(likelihood(bed('2010-01-01', '2021-12-01', { ...end, cause: 'unknown' }))).toBeCloseTo(failed + removed, 8)
  })

  it('of a bed that came with a list and nobody saw: what held before the list is no merit of its life', () => {
    const listed: BedRecord = { ...bed('2010-01-01', null), listedDay: '2020-01-01' }
    const list = parseDay('2020-01-01') as number
    const begun = (parseDay('2010-01-01') as number) + 1
    const now = calls * survival('2010-01-01', AS_OF - 92) + (1 - calls) * survival('2010-01-01', begun)
    const then = calls * survival('2010-01-01', list - 92) + (1 - calls)
    expect(likelihood(listed)).toBeCloseTo((now / then) * stayed('2020-01-01', AS_OF), 8)
  })
})

describe('a forecast of a customer’s bed that nobody has seen for years', () => {
  const forecast = (customerCalls: boolean) => {
    const found = forecastBed({ ...bed('2008-01-01', '2014-01-01'), customerCalls, asOfDay: AS_OF_DAY }, PRIOR)
    if (!found.ok) throw new Error(found.reason)
    return found.value
  }

  it('takes silence for a sign, so that fewer have failed already and more are still to', () => {
    const [heard, unheard] = [forecast(true), forecast(false)]
    expect(unheard.chanceAlreadyFailed).toBeGreaterThan(0.5)
    expect(heard.chanceAlreadyFailed).toBeLessThan(0.7 * unheard.chanceAlreadyFailed)
    expect(heard.chanceAlreadyFailed + heard.monthChances.reduce((sum, chance) => sum + chance, 0)).toBeLessThanOrEqual(1)
    // Days in order, and none before the bed was last seen.
    expect([heard.lastSeenDay, heard.due10Day, heard.due50Day, heard.due90Day]).toEqual(
      [heard.lastSeenDay, heard.due10Day, heard.due50Day, heard.due90Day].sort(),
    )
  })
})

describe('the chance that it has failed already', () => {
  it('is 1 − S(today) / (q·S(half a year’s half ago) + (1 − q)·S(last seen)), by hand', () => {
    const certain = { ...PRIOR, logCovariance: PRIOR.logCovariance.map(() => 0) }
    const found = forecastBed({ ...bed('2010-01-01', '2014-01-01'), asOfDay: AS_OF_DAY }, certain)
    if (!found.ok) throw new Error(found.reason)
    const known = calls * survival('2010-01-01', AS_OF - 92) + (1 - calls) * survival('2010-01-01', parseDay('2014-01-01') as number)
    expect(found.value.chanceAlreadyFailed).toBeCloseTo(1 - survival('2010-01-01', AS_OF) / known, 8)
  })
})

describe('what a firm learns of who calls', () => {
  it('comes from what visits find: many found failed where nobody called mean that few call', () => {
    const random = seeded(7)
    const firm = (share: number) =>
      Array.from({ length: 160 }, (_, i) => {
        const end = AS_OF - Math.floor(random() * 1500)
        const called = random() < share
        const seen = end - (called ? 900 : 400)
        const ended: RecordedEnd = { earliestDay: isoDay(seen), latestDay: isoDay(end), cause: 'failed', found: called ? 'call' : 'visit' }
        return bed(isoDay(end - Math.round((9 + 6 * random()) * 365)), isoDay(seen), i % 2 ? ended : null)
      })
    const odds = (records: BedRecord[]) => {
      const fit = fitBedRecords(records, PRIOR, AS_OF_DAY, 'tested')
      if (!fit.ok) throw new Error(fit.reason)
      return Math.exp(fit.value.parameters.logMean[PARAMETER_KEYS.indexOf('callOdds')] ?? Number.NaN)
    }
    expect(odds(firm(0.95))).toBeGreaterThan(TRADE_PRIORS.callOdds.median)
    expect(odds(firm(0.3))).toBeLessThan(TRADE_PRIORS.callOdds.median / 2)
  })
})

describe('parameters of an earlier release', () => {
  it('are filled up with the trade’s guess at what came since, and keep what they had', () => {
    const before = PARAMETER_KEYS.length - 2
    const logCovariance = Array.from({ length: before * before }, (_, at) => (at % (before + 1) === 0 ? 0.01 : 0.001))
    const old = {
      ...PRIOR,
      logMean: PRIOR.logMean.slice(0, before),
      logCovariance,
      alternatives: [{ share: 0.2, logMean: PRIOR.logMean.slice(0, before), logCovariance }],
    }
    const found = asCurrent(old)
    expect(found.logMean).toEqual(PRIOR.logMean)
    expect(found.logCovariance[PARAMETER_KEYS.length + 1]).toBe(0.01)
    expect(found.logCovariance.at(-1)).toBeCloseTo(TRADE_PRIORS.removalRate.logSd ** 2, 12)
    expect(found.alternatives[0]?.logMean).toHaveLength(PARAMETER_KEYS.length)
    expect(forecastBed({ ...bed('2018-01-01', '2024-01-01'), asOfDay: AS_OF_DAY }, found).ok).toBe(true)
    expect(asCurrent(PRIOR)).toBe(PRIOR)
  })
})
