import { readFileSync } from 'node:fs'
import path from 'node:path'
import { chooseFamily, fittedSurvival } from '@almanac/forecast/fit/choose-family'
import { describe, expect, it } from 'vitest'
import { readCsv } from '../support/read-csv.ts'

type Case = { name: string; aic: number; dist: string; predict: { rows: number | number[]; p: number[]; quantile: number[][] } }
const data = (name: string) => path.join(import.meta.dirname, 'data', name)
const { cases } = JSON.parse(readFileSync(data('survreg_right_censored.json'), 'utf8')) as { cases: Case[] }
const aml = cases.filter((item) => item.name.startsWith('aml') && item.dist !== 'exponential')

const records = readCsv(data('third-party/aml.csv')).map((row) => ({
  lower: Number(row.time),
  upper: row.status === '1' ? Number(row.time) : Number.POSITIVE_INFINITY,
  covariates: [row.x === 'Nonmaintained' ? 1 : 0],
}))

describe('choice among families on the AML data (R survreg)', () => {
  const choice = chooseFamily(records, 1)
  if (!choice.ok) throw new Error(choice.reason)
  const { fits, survival } = choice.value

  it('has survreg’s AIC and Akaike’s weights from it', () => {
    const least = Math.min(...aml.map((item) => item.aic))
    const total = aml.reduce((sum, item) => sum + Math.exp((least - item.aic) / 2), 0)
    for (const item of aml) {
      const own = fits.find(({ fit }) => fit.family === item.dist)
      expect(own?.fit.aic).toBeCloseTo(item.aic, 7)
      expect(own?.share).toBeCloseTo(Math.exp((least - item.aic) / 2) / total, 7)
    }
    expect(fits[0]?.fit.family).toBe('lognormal')
  })

  it('puts survreg’s predicted quantiles at their survival', () => {
    for (const item of aml) {
      const fit = fits.find((weighed) => weighed.fit.family === item.dist)?.fit
      item.predict.quantile.forEach((line, row) => {
        line.forEach((t, i) => void expect(fit && fittedSurvival(fit, t, [row])).toBeCloseTo(1 - (item.predict.p[i] ?? Number.NaN), 8))
      })
    }
  })

  it('averages between the families', () => {
    const each = fits.map(({ fit }) => fittedSurvival(fit, 30, [0]))
    expect(survival(30, [0])).toBeGreaterThan(Math.min(...each))
    expect(survival(30, [0])).toBeLessThan(Math.max(...each))
  })
})
