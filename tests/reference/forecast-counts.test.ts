import { readFileSync } from 'node:fs'
import path from 'node:path'
import type { CountDistribution } from '@almanac/forecast/fleet/count-distribution'
import { countMonths, type MonthChances } from '@almanac/forecast/fleet/month-counts'
import { countAtMost, countBeds, countQuantile } from '@almanac/forecast/fleet/poisson-binomial'
import { conditionalFailureChance } from '@almanac/forecast/lifetime/weibull'
import { describe, expect, it } from 'vitest'
import { RUNNING_CAGES } from '../support/life-records.ts'

type Case = {
  name: string
  n: number
  p: number[] | Record<string, never>
  mean: number
  quantile_probs: number[]
  quantiles: number[]
  pmf: number[] | Record<string, never>
  pmf_at: { k?: number[]; pmf?: number[]; cdf?: number[] }
}
type Reference = { gen: Record<string, [number, number]>; cases: Case[] }
const reference = JSON.parse(readFileSync(path.join(import.meta.dirname, 'data/poisson_binomial.json'), 'utf8')) as Reference

const at = (d: CountDistribution, n: number) => d.chance[n - d.first] ?? 0

function poissonBinomial(chances: readonly number[]): CountDistribution {
  const counter = countBeds()
  for (const chance of chances) counter.add(chance)
  return counter.distribution()
}

function monthCounts(beds: readonly MonthChances[], months: number) {
  const counter = countMonths(months)
  for (const bed of beds) counter.add(bed)
  return counter.counts()
}

/** The generator the file names: MINSTD from seed 42, spread over [a, b]. */
function chances(item: Case): number[] {
  if (Array.isArray(item.p)) return item.p
  const [a, b] = reference.gen[item.name] ?? [Number.NaN, Number.NaN]
  let s = 42
  return Array.from({ length: item.n }, () => {
    s = (16807 * s) % 2147483647
    return a + ((b - a) * s) / 2147483647
  })
}

describe('Poisson-binomial against exact recursion in R', () => {
  it.each(reference.cases)('$name', (item) => {
    const p = chances(item)
    expect(p.reduce((sum, x) => sum + x, 0)).toBeCloseTo(item.mean, 9)
    const counts = poissonBinomial(p)
    if (Array.isArray(item.pmf))
      item.pmf.forEach((expected, n) => void expect(Math.abs(at(counts, n) - expected), `count ${n}`).toBeLessThan(1e-12))
    item.pmf_at.k?.forEach((k, i) => {
      expect(Math.abs(at(counts, k) - (item.pmf_at.pmf?.[i] ?? Number.NaN))).toBeLessThan(1e-12)
      expect(Math.abs(countAtMost(counts, k) - (item.pmf_at.cdf?.[i] ?? Number.NaN))).toBeLessThan(1e-12)
    })
    item.quantile_probs.forEach((q, i) => void expect(countQuantile(counts, q)).toBe(item.quantiles[i]))
  })

  it('predicts the failures of five ages (derived by hand: Weibull 3, 12; ages 5 8 8 10 12; one year)', () => {
    const p = [5, 8, 8, 10, 12].map((age) => conditionalFailureChance({ shape: 3, scale: 12 }, age, 1))
    ;[0.051299, 0.118014, 0.118014, 0.174322, 0.237698].forEach((expected, i) => void expect(p[i]).toBeCloseTo(expected, 6))
    const counts = poissonBinomial(p)
    ;[0.464505, 0.392332, 0.123757, 0.018151, 0.001225, 0.00003].forEach(
      (expected, n) => void expect(at(counts, n)).toBeCloseTo(expected, 6),
    )
  })

  it('predicts the bearing cages of the next 300 hours (Meeker & Escobar 1998; 5.057 in the book, figures derived from the fit)', () => {
    const fit = { shape: 2.035319, scale: 11792.18 }
    const p = RUNNING_CAGES.flatMap(([hours, count]) => new Array<number>(count).fill(conditionalFailureChance(fit, hours, 300)))
    expect(p.reduce((sum, x) => sum + x, 0)).toBeCloseTo(5.058, 3)
    const counts = poissonBinomial(p)
    expect(countAtMost(counts, 0)).toBeCloseTo(0.006293, 5)
    expect(countAtMost(counts, 5)).toBeCloseTo(0.605728, 5)
    expect(countAtMost(counts, 9)).toBeCloseTo(0.966311, 5)
  })
})

describe('a fleet that shares its doubt', () => {
  const beds = (count: number) => Array.from({ length: count }, () => ({ monthChances: [0.02], nodeMonthChances: [0.01, 0.03] }))

  it('has the exact two-point mixture of binomials for a band', () => {
    // 400 beds, chance 0.01 or 0.03 for all: binomial 400 with mean 4 or 12, each with weight one half. From memory of the Poisson limit the band must
    // reach from about 2 or 3 to about 15, where independent beds at 0.02 would give 5 to 12.
    const [shared] = monthCounts(beds(400), 1)
    const [alone] = monthCounts(
      beds(400).map(({ monthChances }) => ({ monthChances })),
      1,
    )
    expect(shared?.mean).toBeCloseTo(8, 10)
    expect(alone?.mean).toBeCloseTo(8, 10)
    const binomial = (n: number, p: number, k: number) => {
      let log = 0
      for (let i = 0; i < k; i++) log += Math.log((n - i) / (i + 1))
      return Math.exp(log + k * Math.log(p) + (n - k) * Math.log1p(-p))
    }
    const least = (target: number, chance: (k: number) => number) => {
      let sum = 0
      let k = -1
      while (sum < target) sum += chance(++k)
      return k
    }
    const mixed = (k: number) => (binomial(400, 0.01, k) + binomial(400, 0.03, k)) / 2
    expect([shared?.p10, shared?.p50, shared?.p90]).toEqual([least(0.1, mixed), least(0.5, mixed), least(0.9, mixed)])
    const single = (k: number) => binomial(400, 0.02, k)
    expect([alone?.p10, alone?.p90]).toEqual([least(0.1, single), least(0.9, single)])
    expect((shared?.p90 ?? 0) - (shared?.p10 ?? 0)).toBeGreaterThan((alone?.p90 ?? 0) - (alone?.p10 ?? 0))
  })

  it('refuses beds forecast with other parameters', () => {
    expect(() => monthCounts([...beds(1), { monthChances: [0.02] }], 1)).toThrow(/parameter nodes/)
    expect(() => poissonBinomial([0.1, Number.NaN])).toThrow(/chance of NaN/)
  })
})
