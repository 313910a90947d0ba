import { readFileSync } from 'node:fs'
import path from 'node:path'
import { fitLifetime, type LifeFit } from '@almanac/forecast/fit/fit-lifetime'
import type { LifeFamilyName } from '@almanac/forecast/lifetime/life-family'
import type { LifeRecord } from '@almanac/forecast/lifetime/life-record'
import { describe, expect, it } from 'vitest'
import { exact, life, off, running } from '../support/life-records.ts'
import { readCsv } from '../support/read-csv.ts'

type Case = { name: string; dist: string; n: number; coef: Record<string, number>; scale: number; loglik: number; vcov: number[][] }
type Row = Record<string, string>

const data = (name: string) => path.join(import.meta.dirname, 'data', name)
const json = (name: string) => JSON.parse(readFileSync(data(name), 'utf8')) as { cases: Case[] }
const rows = (name: string) => readCsv(data(`third-party/${name}.csv`))

function fitted(records: LifeRecord[], family: string): LifeFit {
  const result = fitLifetime(records, family as LifeFamilyName, records[0]?.covariates?.length ?? 0)
  if (!result.ok) throw new Error(result.reason)
  return result.value
}

function expectFit(fit: LifeFit, item: Case, tolerance: number, covarianceTolerance: number) {
  Object.values(item.coef).forEach(
    (expected, i) => void expect(off(fit.coefficients[i], expected), `coefficient ${i}`).toBeLessThan(tolerance),
  )
  expect(off(fit.scale, item.scale), 'scale').toBeLessThan(tolerance)
  expect(off(fit.logLikelihood, item.loglik), 'log-likelihood').toBeLessThan(tolerance)
  item.vcov.forEach((line, i) => {
    line.forEach((expected, j) => {
      // Relative to the two standard errors: an entry near nil has no digits of its own.
      const unit = Math.sqrt((item.vcov[i]?.[i] ?? 0) * (item.vcov[j]?.[j] ?? 0))
      expect(Math.abs((fit.covariance[i * line.length + j] ?? Number.NaN) - expected) / unit, `covariance ${i},${j}`).toBeLessThan(
        covarianceTolerance,
      )
    })
  })
}

const RIGHT_CENSORED: Record<string, (row: Row) => LifeRecord | null> = {
  aml: (row) => life(Number(row.time), row.status === '1', [row.x === 'Nonmaintained' ? 1 : 0]),
  ovarian: (row) => life(Number(row.futime), row.fustat === '1', [Number(row['ecog.ps']), Number(row.rx), Number(row.age)]),
  // One patient's performance score is missing; survreg leaves the row out.
  lung: (row) =>
    /^\d/.test(row['ph.ecog'] ?? '')
      ? life(Number(row.time), row.status === '2', [Number(row.age), Number(row.sex), Number(row['ph.ecog'])])
      : null,
  // Nothing failed at 150 °C; the published fit leaves that group out.
  imotor: (row) => (row.temp === '150' ? null : life(Number(row.time), row.status === '1', [1000 / (273.2 + Number(row.temp))])),
}

describe('R survreg: coefficients and log-likelihood 1e-8, covariance 1e-6', () => {
  it.each(json('survreg_right_censored.json').cases.filter((item) => item.dist !== 'exponential'))('$name', (item) => {
    const name = item.name.split('_')[0] ?? ''
    const records = rows(name).flatMap((row) => RIGHT_CENSORED[name]?.(row) ?? [])
    expect(records).toHaveLength(item.n)
    expectFit(fitted(records, item.dist), item, 1e-8, 1e-6)
  })

  it.each(json('survreg_interval_censored.json').cases.filter((item) => item.name.startsWith('turbine')))('$name', (item) => {
    // Inspected once: failed before the inspection, or still sound after it.
    const records = rows('turbine').flatMap((row) => {
      const [hours, inspected, failed] = [Number(row.hours), Number(row.inspected), Number(row.failed)]
      return [{ lower: 0, upper: hours, weight: failed }, running(hours, inspected - failed)]
    })
    expectFit(fitted(records, item.dist), item, 1e-8, 1e-6)
  })
})

describe('late entry: heart transplant data, hand-written likelihood in R', () => {
  it.each(json('left_truncated.json').cases)('$name', (item) => {
    const records = rows('heart').map((row) =>
      life(
        Number(row.stop),
        row.event === '1',
        [Number(row.age), Number(row.year), Number(row.surgery), Number(row.transplant)],
        Number(row.start),
      ),
    )
    const fit = fitted(records, item.dist)
    expect(off(fit.logLikelihood, item.loglik)).toBeLessThan(1e-10)
    // The reference was polished to a gradient of 1e-8, which leaves about 1e-8 in the coefficients.
    expectFit(fit, item, 2e-7, 1e-6)
  })
})

describe('2,400 synthetic records with late entry', () => {
  type Fit = { theta: number[]; scale: number; loglik: number; vcov: number[][]; coef: number[] }
  type Kind = 'left_truncated' | 'right_censored_ignoring_truncation' | 'interval_ignoring_truncation'
  const reference = JSON.parse(readFileSync(data('sim2400.json'), 'utf8')) as Record<LifeFamilyName, Record<Kind, Fit>>
  const table = readCsv(data('sim2400.csv'))
  const x = (row: Row) => [Number(row.x1), Number(row.x2)]

  it.each(['weibull', 'lognormal', 'loglogistic'] as const)('%s', (family) => {
    const truncated = fitted(
      table.map((row) => life(Number(row.exit), row.event === '1', x(row), Number(row.entry))),
      family,
    )
    const expected = reference[family].left_truncated
    expect(off(truncated.logLikelihood, expected.loglik)).toBeLessThan(1e-10)
    const coef = Object.fromEntries(expected.theta.slice(0, 3).map((value, i) => [String(i), value]))
    expectFit(
      truncated,
      { name: family, dist: family, n: 2400, coef, scale: expected.scale, loglik: expected.loglik, vcov: expected.vcov },
      2e-7,
      1e-6,
    )

    const intervals = table.map((row) => ({
      lower: Number(row.lo),
      upper: row.hi === '' ? Number.POSITIVE_INFINITY : Number(row.hi),
      covariates: x(row),
    }))
    const blind = fitted(intervals, family)
    expect(off(blind.logLikelihood, reference[family].interval_ignoring_truncation.loglik)).toBeLessThan(1e-8)
    expect(off(blind.scale, reference[family].interval_ignoring_truncation.scale)).toBeLessThan(1e-8)
  })

  it('shows why late entry must not be ignored: R’s blind fit has scale 0.344 where the data were made with 0.380', () => {
    const records = table.map((row) => life(Number(row.exit), row.event === '1', x(row), Number(row.entry)))
    const blind = fitted(
      records.map(({ entry: _entry, ...record }) => record),
      'weibull',
    )
    expect(off(blind.scale, reference.weibull.right_censored_ignoring_truncation.scale)).toBeLessThan(1e-8)
    expect(off(blind.logLikelihood, reference.weibull.right_censored_ignoring_truncation.loglik)).toBeLessThan(1e-8)
    expect(blind.scale).toBeLessThan(0.35)
    expect(Math.abs(fitted(records, 'weibull').scale - 0.38)).toBeLessThan(0.035)
  })

  it('finds a scale of 0.400 again among late comers, and far too little when their late coming is ignored (0.338 on the file of npm run bench -- forecast)', () => {
    // Lives with scale 0.4 and location 2.75; six in ten are met only at an age up to twenty, and those that failed before are never met.
    let s = 20_260_101
    const random = () => {
      s = (16807 * s) % 2147483647
      return s / 2147483647
    }
    const records: LifeRecord[] = []
    while (records.length < 20_000) {
      const age = Math.exp(2.75 + 0.4 * Math.log(-Math.log(random())))
      const entry = random() < 0.6 ? 20 * random() : 0
      if (age > entry) records.push(life(age, true, [], entry))
    }
    expect(Math.abs(fitted(records, 'weibull').scale - 0.4)).toBeLessThan(0.01)
    expect(
      fitted(
        records.map(({ entry: _entry, ...record }) => record),
        'weibull',
      ).scale,
    ).toBeLessThan(0.375)
  })
})

describe('thin or contradictory records', () => {
  const weibull = (records: LifeRecord[]) => fitLifetime(records, 'weibull')
  it('are refused with a sentence', () => {
    expect(weibull([running(5), running(8)])).toMatchObject({ ok: false, reason: expect.stringContaining('No failure') })
    expect(weibull([{ lower: 5, upper: 4 }])).toMatchObject({ ok: false, reason: expect.stringContaining('Record 1') })
    expect(weibull([{ lower: 5, upper: 5, entry: 6 }])).toMatchObject({
      ok: false,
      reason: expect.stringContaining('first seen at age 6'),
    })
    expect(weibull([{ lower: Number.NaN, upper: 4 }]).ok).toBe(false)
    expect(fitLifetime([life(5, true, [1]), life(9, false, [1])], 'weibull', 1).ok).toBe(false)
  })

  it('stay near a strong prior and leave it when records are many', () => {
    const prior = { mean: [Math.log(15), Math.log(1 / 3)], precision: [1 / 0.15 ** 2, 0, 0, 1 / 0.2 ** 2] }
    const some = fitLifetime([...exact(4, 6, 7, 9), running(10)], 'weibull', 0, prior)
    const many = fitLifetime(
      [
        { lower: 6, upper: 6, weight: 400 },
        { lower: 8, upper: 8, weight: 400 },
      ],
      'weibull',
      0,
      prior,
    )
    if (!some.ok || !many.ok) throw new Error('the fits must settle')
    const centre = (fit: LifeFit) => Math.exp(fit.coefficients[0] ?? Number.NaN)
    expect(centre(some.value)).toBeGreaterThan(9)
    expect(centre(some.value)).toBeLessThan(15)
    expect(centre(many.value)).toBeLessThan(8)
  })
})
