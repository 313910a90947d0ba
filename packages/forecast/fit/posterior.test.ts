import { isoDay, parseDay } from '@almanac/units/calendar/day-number'
import { describe, expect, it } from 'vitest'
import { simulateFirm } from '../../../scripts/bench/simulate/simulate-firm.ts'
import { LIFE_FAMILIES, type LifeFamilyName } from '../lifetime/life-family.ts'
import { spreadOf } from '../lifetime/spread.ts'
import { seeded } from '../numeric/seeded.ts'
import { PARAMETER_KEYS } from '../priors/forecast-parameters.ts'
import { centralValues, parameterNodes } from '../priors/parameter-nodes.ts'
import { tradePriors } from '../priors/trade-priors.ts'
import type { BedRecord } from './bed-record.ts'
import { correctedPosterior } from './corrected-posterior.ts'
import { fitBedRecords } from './fit-bed-records.ts'
import { lifeLikelihood, lifeTable } from './life-likelihood.ts'
import { lifePosterior } from './life-posterior.ts'
import { placeTable } from './place-table.ts'
import { likelihoodOf } from './plain-likelihood.ts'
import { placePlain, plainSlopes, plainTable, plainValue } from './plain-table.ts'
import { type ReadRecord, readRecord } from './read-record.ts'
import { shiftTerms } from './shift-terms.ts'
import { type WearTable, wearTable } from './wear-table.ts'

const PRIOR = tradePriors()
/** From one variance to the next in a covariance laid out row by row. */
const NEXT = PARAMETER_KEYS.length + 1
const AS_OF = '2026-01-01'
const FAMILIES: LifeFamilyName[] = ['weibull', 'lognormal', 'loglogistic']

function tableOf(records: readonly BedRecord[]): WearTable {
  const read = records.map((record) => readRecord(record, AS_OF, PRIOR))
  const good = read.flatMap((one, i) => (one.ok ? [{ one: one as ReadRecord, supply: records[i]?.supply ?? null }] : []))
  return wearTable(
    good.map(({ one }) => one),
    good.map(({ supply }) => supply),
  )
}

const SAME = Array.from({ length: 5 }, () => [
  { fromDay: '1990-01-01', disinfectant: 'free-chlorine' as const, disinfectantMgL: 0.8, hardnessGpg: 15, ironMgL: 0 },
])

const firm = (beds: number, seed: number, supplySpread?: number, waters?: typeof SAME) =>
  simulateFirm(
    {
      beds,
      truth: centralValues(PRIOR),
      asOfDay: AS_OF,
      lateEntryShare: 0.5,
      earlyRemovalShare: 0.1,
      ...(supplySpread === undefined ? {} : { supplySpread }),
      ...(waters === undefined ? {} : { waters }),
    },
    seeded(seed),
    PRIOR,
  ).map((bed) => bed.record)

describe('one shape for three distributions', () => {
  it('gives the same standard deviation of ln life, π/(√6·shape): Gumbel π/√6, normal 1, logistic π/√3 per unit of scale', () => {
    const unit = { weibull: Math.PI / Math.sqrt(6), lognormal: 1, loglogistic: Math.PI / Math.sqrt(3) }
    for (const family of FAMILIES) expect(spreadOf(family) * unit[family]).toBeCloseTo(Math.PI / Math.sqrt(6), 12)
  })
})

describe('the likelihood of bed records on clean water', () => {
  it('is that of plain lives with late entry, which agrees with R (forecast-fit.test.ts)', () => {
    const begin = parseDay('2000-01-01') ?? Number.NaN
    const day = (years: number) => isoDay(Math.round(begin + years * 365.2425))
    const lives = [
      { entry: 0, lower: 5, upper: 8 },
      { entry: 3, lower: 9, upper: 11 },
      { entry: 6, lower: 14, upper: Number.POSITIVE_INFINITY },
      { entry: 0, lower: 20, upper: Number.POSITIVE_INFINITY },
      { entry: 2, lower: 12, upper: 13 },
    ]
    const records: BedRecord[] = lives.map(({ entry, lower, upper }) => ({
      beginning: { earliestDay: day(0), latestDay: day(0) },
      firstSeenDay: entry > 0 ? day(entry) : null,
      lastSeenDay: day(lower),
      end: Number.isFinite(upper) ? { earliestDay: day(lower), latestDay: day(upper), cause: 'failed' } : null,
      crosslinkPercent: 8,
      resinVolumeFt3: null,
      gallonsPerDay: null,
      water: {
        supplyPeriods: [{ fromDay: '1990-01-01', disinfectant: 'none', disinfectantMgL: null, hardnessGpg: 15, ironMgL: 0 }],
        tests: [],
        preTreatments: [],
      },
    }))
    const rounded = lives.map((life) => {
      const years = (value: number) => (Number.isFinite(value) ? Math.round(value * 365.2425) / 365.2425 : value)
      return { entry: years(life.entry), lower: years(life.lower), upper: years(life.upper) }
    })
    for (const family of FAMILIES) {
      const scale = spreadOf(family) / Math.exp(PRIOR.logMean[1] ?? 0)
      const location = (PRIOR.logMean[0] ?? 0) - scale * LIFE_FAMILIES[family].quantile(0.5)
      const expected = lifeLikelihood(lifeTable(rounded, 0), LIFE_FAMILIES[family], [location, Math.log(scale)]).value
      expect(likelihoodOf(tableOf(records), family)(PRIOR.logMean), family).toBeCloseTo(expected, 8)
    }
  })
})

describe('chances in plain numbers', () => {
  it('are those in logarithms to rounding, with their slopes, also of a bed that no one would believe', () => {
    const ancient = (record: BedRecord): BedRecord => ({ ...record, beginning: { earliestDay: '1850-01-01', latestDay: '1850-01-01' } })
    const usual = firm(80, 12)
    const records = [
      ...usual,
      ...usual
        .filter(({ end }) => end === null)
        .slice(0, 3)
        .map(ancient),
    ]
    const table = tableOf(records.map((record, i) => ({ ...record, customerCalls: i % 2 === 0 })))
    for (const family of FAMILIES) {
      const plain = plainTable(table, family)
      placePlain(plain, PRIOR.logMean)
      for (const shift of [-0.6, 0, 0.4]) {
        const [value, rise, bend] = shiftTerms(placeTable(table, family, PRIOR.logMean), 0, table.count, shift)
        expect(plainValue(plain, 0, table.count, shift) / (value ?? 0), `${family} ${shift}`).toBeCloseTo(1, 9)
        const slopes = plainSlopes(plain, 0, table.count, shift)
        expect((slopes[0] ?? 0) / (rise ?? 0), `${family} ${shift}`).toBeCloseTo(1, 6)
        expect((slopes[1] ?? 0) / (bend ?? 0), `${family} ${shift}`).toBeCloseTo(1, 6)
      }
    }
  })
})

describe('the posterior in use', () => {
  it('has the mean and covariance of the posterior itself, by brute force over a grid of median and shape', () => {
    const table = tableOf(firm(14, 3))
    expect(table.failures).toBeLessThan(12)
    // All but median and shape held: two dimensions can be summed out.
    const logCovariance = PRIOR.logCovariance.map((value, i) => (i === 0 || i === NEXT ? 4 * value : i % NEXT === 0 ? 1e-8 : 0))
    const prior = { ...PRIOR, logCovariance }
    const found = lifePosterior(table, 'weibull', prior)
    if (found === null) throw new Error('the fit must settle')
    const corrected = correctedPosterior(table, found, prior)
    const logLikelihood = likelihoodOf(table, 'weibull')
    const sums = { weight: 0, first: 0, second: 0, twice: 0 }
    const [sd0, sd1] = [Math.sqrt(logCovariance[0] ?? 0), Math.sqrt(logCovariance[NEXT] ?? 0)]
    for (let i = -60; i <= 60; i++)
      for (let j = -60; j <= 60; j++) {
        const theta = [...PRIOR.logMean]
        const [x, y] = [(i / 60) * 4, (j / 60) * 4]
        theta[0] = (theta[0] ?? 0) + sd0 * x
        theta[1] = (theta[1] ?? 0) + sd1 * y
        const weight = Math.exp(logLikelihood(theta) - found.logLikelihood - (x * x + y * y) / 2)
        sums.weight += weight
        sums.first += weight * theta[0]
        sums.second += weight * theta[1]
        sums.twice += weight * theta[1] ** 2
      }
    const mean = sums.second / sums.weight
    const sd = Math.sqrt(sums.twice / sums.weight - mean * mean)
    expect(Math.abs((corrected.logMean[1] ?? 0) - mean) / sd).toBeLessThan(0.03)
    expect(Math.abs((corrected.logMean[0] ?? 0) - sums.first / sums.weight) / sd).toBeLessThan(0.03)
    expect(Math.sqrt(corrected.logCovariance[NEXT] ?? 0) / sd).toBeCloseTo(1, 1)
    // The mode is elsewhere: what the correction is for.
    expect(Math.abs((found.logMean[1] ?? 0) - mean) / sd).toBeGreaterThan(0.06)
  })

  it('integrates a supply’s effect as 4,001 trapezoid points do, also where it is a spike', () => {
    for (const beds of [20, 1500]) {
      const table = tableOf(firm(beds, 5, 0.2).filter(({ supply }) => supply === 'supply-1'))
      const placed = placeTable(table, 'weibull', PRIOR.logMean)
      expect(table.supplies).toHaveLength(1)
      for (const spread of [0.03, 0.2]) {
        const logs = Array.from({ length: 4001 }, (_, i) => (i - 2000) / 250).map((z) => {
          return (shiftTerms(placed, 0, table.count, spread * z)[0] ?? 0) - 0.5 * z * z
        })
        const top = Math.max(...logs)
        const expected = top + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - top), 0) / 250 / Math.sqrt(2 * Math.PI))
        expect(likelihoodOf(table, 'weibull')([...PRIOR.logMean, Math.log(spread)]), `${beds} beds, spread ${spread}`).toBeCloseTo(
          expected,
          4,
        )
      }
    }
  })

  it('finds supplies that last less, gives that to their beds alone, and does without when there are too few', () => {
    // All on the same water, so that no exposure can take the blame.
    const short = (record: BedRecord): BedRecord => (record.supply === 'supply-3' ? { ...record, supply: 'short' } : record)
    const records = firm(1200, 8, 0, SAME).map(short)
    const halved = records.map((record) => {
      if (record.supply !== 'short' || record.end?.cause !== 'failed' || record.beginning.earliestDay === null) return record
      const begin = parseDay(record.beginning.earliestDay) ?? 0
      const sooner = (text: string) => isoDay(Math.round(begin + 0.75 * ((parseDay(text) ?? 0) - begin)))
      return {
        ...record,
        firstSeenDay: record.firstSeenDay === null ? null : sooner(record.firstSeenDay),
        lastSeenDay: record.lastSeenDay === null ? null : sooner(record.lastSeenDay),
        visitDays: (record.visitDays ?? []).map(sooner),
        end: { ...record.end, earliestDay: sooner(record.end.earliestDay), latestDay: sooner(record.end.latestDay) },
      }
    })
    const fit = fitBedRecords(halved, PRIOR, AS_OF, 'supplies')
    if (!fit.ok) throw new Error(fit.reason)
    const effect = (supply: string) => fit.value.supplies.find((one) => one.supply === supply)?.mean ?? Number.NaN
    for (const other of ['supply-0', 'supply-1', 'supply-2', 'supply-4']) expect(effect('short')).toBeLessThan(effect(other) - 0.05)
    const nodes = parameterNodes(fit.value.parameters)
    const mean = (supply: string) => nodes.reduce((sum, node) => sum + node.supplyLog(supply), 0) / nodes.length
    expect(mean('short')).toBeCloseTo(effect('short'), 2)
    expect(mean('never seen')).toBeCloseTo(0, 6)
    const two = fitBedRecords(
      firm(200, 9, 0.1).map((record) => ({ ...record, supply: record.supply === 'supply-0' ? 'a' : 'b' })),
      PRIOR,
      AS_OF,
      'two',
    )
    expect(two.ok && two.value.notes).toEqual([expect.stringContaining('three of them')])
    expect(two.ok && two.value.supplies).toEqual([])
  })
})
