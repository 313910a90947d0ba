import { describe, expect, it } from 'vitest'
import { type SimulatedBed, simulateFirm } from '../../../scripts/bench/simulate/simulate-firm.ts'
import { PARAMETER_KEYS, type ParameterValues } from '../priors/forecast-parameters.ts'
import { centralValues } from '../priors/parameter-nodes.ts'
import { tradePriors } from '../priors/trade-priors.ts'
import { addRecords } from './add-records.ts'
import type { BedRecord } from './bed-record.ts'
import { derivatives } from './derivatives.ts'
import { fitBedRecords } from './fit-bed-records.ts'
import { placeTable } from './place-table.ts'
import { readRecord } from './read-record.ts'
import { wearTable } from './wear-table.ts'

const PRIOR = tradePriors()
const AS_OF = '2026-01-01'
/** A firm whose beds last 10.5 years on clean water: two prior standard deviations short of the trade's word. */
const TRUTH: ParameterValues = { ...centralValues(PRIOR), medianCleanYears: 10.5, shape: 3.6, chloramineWeight: 1.6 }

/** MINSTD. */
function seeded(seed: number) {
  let s = seed
  return () => {
    s = (16807 * s) % 2147483647
    return s / 2147483647
  }
}

function firm(beds: number, seed: number, truth = TRUTH): SimulatedBed[] {
  return simulateFirm({ beds, truth, asOfDay: AS_OF, lateEntryShare: 0.5, earlyRemovalShare: 0.15 }, seeded(seed), PRIOR)
}
const records = (beds: SimulatedBed[]) => beds.map((bed) => bed.record)

function fit(list: BedRecord[], asOf = AS_OF) {
  const result = fitBedRecords(list, PRIOR, asOf, 'test')
  if (!result.ok) throw new Error(result.reason)
  return result.value
}
const at = (logs: readonly number[], key: keyof ParameterValues) => Math.exp(logs[PARAMETER_KEYS.indexOf(key)] ?? Number.NaN)

const SIZE = PARAMETER_KEYS.length

/** A customer's bed in service, called for, found failed, failed nobody knows how, taken out for another reason, and for a reason nobody knows. */
function asTheyArise(record: BedRecord): BedRecord[] {
  const end = { earliestDay: '2014-01-01', latestDay: '2018-03-01' }
  return [
    { ...record, end: null },
    { ...record, end: { ...end, cause: 'failed', found: 'call' } },
    { ...record, end: { ...end, cause: 'failed', found: 'visit' } },
    { ...record, end: { ...end, cause: 'failed' } },
    { ...record, end: { ...end, cause: 'removed-early' } },
    { ...record, end: { ...end, cause: 'unknown' } },
  ]
}

describe('the likelihood of a bed record', () => {
  it('has first and second derivatives equal to its differences, for every kind of record and distribution', () => {
    const base = records(firm(1, 3))[0] as BedRecord
    const end = (earliestDay: string, latestDay: string, cause: 'failed' | 'removed-early') => ({ earliestDay, latestDay, cause })
    const water = {
      ...base.water,
      supplyPeriods: [
        { fromDay: '1990-01-01', disinfectant: 'free-chlorine' as const, disinfectantMgL: 0.8, hardnessGpg: 9, ironMgL: 0.2 },
        { fromDay: '2014-05-01', disinfectant: 'chloramine' as const, disinfectantMgL: 2.4, hardnessGpg: 9, ironMgL: 0.2 },
      ],
    }
    const old = {
      ...base,
      water,
      beginning: { earliestDay: '2006-01-01', latestDay: '2006-01-01' },
      firstSeenDay: '2010-06-01',
      lastSeenDay: '2020-01-01',
      crosslinkPercent: 10,
    }
    const kinds: BedRecord[] = [
      { ...old, end: null },
      { ...old, end: end('2018-03-01', '2018-03-01', 'failed') },
      { ...old, end: end('2016-03-01', '2018-03-01', 'failed') },
      { ...old, end: end('2016-03-01', '2018-03-01', 'removed-early') },
      { ...old, beginning: { earliestDay: '2003-01-01', latestDay: '2009-12-31' }, end: end('2016-03-01', '2018-03-01', 'failed') },
      ...asTheyArise({ ...old, customerCalls: true, lastSeenDay: '2014-01-01' }),
      ...asTheyArise({
        ...old,
        customerCalls: true,
        beginning: { earliestDay: '2003-01-01', latestDay: '2009-12-31' },
        lastSeenDay: '2014-01-01',
      }),
      { ...old, customerCalls: true, firstSeenDay: null, lastSeenDay: null, listedDay: '2015-06-01', end: null },
    ]
    for (const kind of kinds) {
      const read = readRecord(kind, AS_OF, PRIOR)
      if (!read.ok) throw new Error(read.reason)
      const table = wearTable([read], [null])
      const theta = Float64Array.from(PRIOR.logMean, (value, i) => value + 0.05 * (i % 3))
      for (const family of ['weibull', 'lognormal', 'loglogistic'] as const) {
        const at = (i: number, by: number) => {
          const out = derivatives()
          addRecords(
            placeTable(
              table,
              family,
              theta.map((x, j) => (i === j ? x + by : x)),
            ),
            0,
            1,
            0.1,
            out,
          )
          return out
        }
        const here = at(0, 0)
        for (let i = 0; i < SIZE; i++) {
          const [up, down] = [at(i, 1e-5), at(i, -1e-5)]
          const name = `${family} ${JSON.stringify(kind.end)} ${PARAMETER_KEYS[i]}`
          expect(here.gradient[i], name).toBeCloseTo((up.value - down.value) / 2e-5, 6)
          for (let j = 0; j < SIZE; j++) {
            const difference = ((up.gradient[j] ?? Number.NaN) - (down.gradient[j] ?? Number.NaN)) / 2e-5
            expect(here.hessian[i > j ? i * SIZE + j : j * SIZE + i], `${name} ${PARAMETER_KEYS[j]}`).toBeCloseTo(difference, 5)
          }
        }
      }
    }
  })
})

describe('a fit to a firm’s records', () => {
  it('stays near the prior with few failures and follows eight hundred', () => {
    const few = fit(records(firm(12, 11)))
    expect(few.failures).toBeLessThan(15)
    expect(at(few.parameters.logMean, 'medianCleanYears')).toBeGreaterThan(10.8)
    const many = fit(records(firm(2000, 12)))
    expect(many.failures).toBeGreaterThan(700)
    expect(at(many.parameters.logMean, 'medianCleanYears')).toBeGreaterThan(9.6)
    expect(at(many.parameters.logMean, 'medianCleanYears')).toBeLessThan(11.4)
    expect(at(many.parameters.logMean, 'chloramineWeight')).toBeGreaterThan(1.2)
    expect(many.learned.medianCleanYears).toBeGreaterThan(0.8)
    expect(few.learned.medianCleanYears).toBeLessThan(many.learned.medianCleanYears ?? 0)
  })

  it('learns nothing from what came after its day', () => {
    const beds = records(firm(400, 13))
    const cut = '2020-01-01'
    const later = beds.map((record) =>
      record.end !== null && record.end.latestDay > cut ? { ...record, end: null, lastSeenDay: cut } : record,
    )
    // What happened after the day is not looked at: an end of 2023 and no end at all are the same to a fit for 2020, but for the visit that the second tells of.
    const known = beds.map((record) => (record.end !== null && record.end.latestDay > cut ? { ...record, lastSeenDay: cut } : record))
    expect(fit(known, cut).parameters.logMean).toEqual(fit(later, cut).parameters.logMean)
  })

  it('comes to believe in age alone where nothing else acts, and not where the water does', () => {
    const idle = { ...centralValues(PRIOR), chlorineExponent: 1e-6, ironExponent: 1e-6, crosslinkEffect: 1e-6, throughputExponent: 1e-6 }
    const none = fit(records(firm(600, 21, idle)))
    expect(none.noEffectShare).toBeGreaterThan(0.8)
    expect(at(none.parameters.logMean, 'chlorineExponent')).toBeLessThan(0.01)
    expect(fit(records(firm(600, 22))).noEffectShare).toBeLessThan(0.05)
  })

  it('leaves call-backs for workmanship out and says so', () => {
    const beds = records(firm(60, 14))
    const callBack: BedRecord = {
      ...(beds[0] as BedRecord),
      end: { earliestDay: '2025-02-01', latestDay: '2025-02-01', cause: 'workmanship' },
      firstSeenDay: null,
    }
    const result = fit([...beds, callBack])
    expect(result.leftOut).toEqual([{ reason: expect.stringContaining('workmanship'), count: 1 }])
    expect(result.parameters.logMean).toEqual(fit(beds).parameters.logMean)
  })

  it('takes a firm without failures: its survivors are on record as well', () => {
    const running = records(firm(60, 15)).map((record) => ({ ...record, end: null }))
    expect(fitBedRecords(running, PRIOR, AS_OF, 'x')).toMatchObject({ ok: true, value: { failures: 0, used: running.length } })
  })

  it('is unchanged by another firm: a fit is a function of its own records alone', () => {
    const own = records(firm(80, 16))
    const before = fit(own).parameters
    fit(records(firm(80, 17)))
    expect(fit(own).parameters).toEqual(before)
  })
})
