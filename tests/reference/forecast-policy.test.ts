import { readFileSync } from 'node:fs'
import path from 'node:path'
import { kaplanMeier, survivalAt } from '@almanac/forecast/lifetime/kaplan-meier'
import { ageReplacement } from '@almanac/forecast/policy/age-replacement'
import { newBedSurvival } from '@almanac/forecast/policy/new-bed-survival'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { describe, expect, it } from 'vitest'
import { readCsv } from '../support/read-csv.ts'

const data = (name: string) => path.join(import.meta.dirname, 'data', name)

/** S(t) = exp(−(t/scale)^shape). */
const survival = ({ shape, scale }: { shape: number; scale: number }, t: number) => Math.exp(-((t / scale) ** shape))

function policy(shape: number, scale: number, planned: number, failure: number, fixed?: number) {
  const result = ageReplacement((t) => survival({ shape, scale }, t), { planned, failure, beadsShare: 0, beads: 0 }, fixed)
  if (!result.ok) throw new Error(result.reason)
  return result.value
}

describe('age replacement', () => {
  // The same inputs in the documentation of the Python library `reliability` ("Optimal replacement time"): "The optimal replacement time is 493.05"; a later
  // version's coarser search prints 493.19.
  it('ReliaWiki, "Optimum Replacement Time Example": Weibull 2.5, 1000 h, $1 preventive, $5 corrective: 493.05 h', () => {
    // In hundreds of hours, so that the curve's steps of 1/24 are fine enough.
    expect((policy(2.5, 10, 1, 5).best?.ageYears ?? Number.NaN) * 100).toBeCloseTo(493.05, 1)
  })

  it('solves the optimality condition h(T)·∫S + S = failure/(failure − planned) (Barlow & Proschan 1965)', () => {
    for (const [shape, ratio] of [
      [2, 4],
      [3, 3],
      [4, 8],
    ] as const) {
      const best = policy(shape, 12, 1, ratio).best
      const t = best?.ageYears ?? Number.NaN
      let lived = 0
      const n = 4000
      for (let i = 0; i < n; i++) lived += (survival({ shape, scale: 12 }, ((i + 0.5) * t) / n) * t) / n
      const hazard = (shape / 12) * (t / 12) ** (shape - 1)
      expect(hazard * lived + survival({ shape, scale: 12 }, t)).toBeCloseTo(ratio / (ratio - 1), 3)
    }
  })

  it('never pays without wear-out, or when a failure costs no more', () => {
    expect(policy(1, 12, 1, 5).best).toBeNull()
    expect(policy(3, 12, 5, 5).best).toBeNull()
  })

  it('saves against waiting, and against a fixed age that is not the best', () => {
    const value = policy(3, 12, 1, 4, 12)
    expect(value.savedAgainstRunToFailure).toBeGreaterThan(0)
    expect(value.savedAgainstFixedAge).toBeGreaterThan(0)
    expect(value.window?.fromYears).toBeLessThan(value.best?.ageYears ?? 0)
    expect(value.window?.toYears).toBeGreaterThan(value.best?.ageYears ?? 99)
    // Waiting costs failure over mean life; mean of Weibull 3, 12 is 10.7158.
    expect(value.runToFailureCostPerYear).toBeCloseTo(4 / 10.7158, 5)
  })

  it('comes earlier on harsher water', () => {
    const best = (freeChlorineMgL: number) => {
      const lasting = newBedSurvival(
        { crosslinkPercent: 8, gallonsPerDayPerFt3: null },
        { freeChlorineMgL, chloramineMgL: 0, ironMgL: 0, temperatureC: null },
        tradePriors(),
      )
      const result = ageReplacement(lasting, { planned: 60_000, failure: 120_000, beadsShare: 0.1, beads: 80_000 })
      return result.ok ? (result.value.best?.ageYears ?? Number.NaN) : Number.NaN
    }
    expect(best(2)).toBeLessThan(best(0))
  })

  it('refuses costs that are none', () => {
    expect(ageReplacement(() => 1, { planned: 0, failure: 1, beadsShare: 0, beads: 0 })).toMatchObject({ ok: false })
    expect(ageReplacement(() => 1, { planned: 1, failure: 1, beadsShare: 2, beads: 0 })).toMatchObject({ ok: false })
  })
})

type Stratum = { stratum: string; time: number[]; n_risk: number[]; n_event: number[]; surv: number[]; std_err_cumhaz: number[] }
type Curve = { name: string; strata: Stratum[] }
const curves = JSON.parse(readFileSync(data('kaplan_meier.json'), 'utf8')) as Curve[]

describe('Kaplan–Meier against R survfit', () => {
  it('AML by group, and by the published table: 9 .909, 13 .818, 18 .716, 23 .614, 31 .491, 34 .368, 48 .184', () => {
    const rows = readCsv(data('third-party/aml.csv'))
    for (const stratum of curves.find((curve) => curve.name === 'aml_by_x')?.strata ?? []) {
      const lives = rows
        .filter((row) => stratum.stratum === `x=${row.x}`)
        .map((row) => ({ age: Number(row.time), failed: row.status === '1' }))
      const steps = kaplanMeier(lives)
      stratum.time.forEach((time, i) => void expect(survivalAt(steps, time)).toBeCloseTo(stratum.surv[i] ?? Number.NaN, 12))
      expect(steps.map((step) => step.atRisk)).toEqual(stratum.n_risk.filter((_, i) => (stratum.n_event[i] ?? 0) > 0))
    }
    const kept = kaplanMeier(
      rows.filter((row) => row.x === 'Maintained').map((row) => ({ age: Number(row.time), failed: row.status === '1' })),
    )
    expect(kept.map((step) => [step.age, Math.round(step.survival * 1000) / 1000])).toEqual([
      [9, 0.909],
      [13, 0.818],
      [18, 0.716],
      [23, 0.614],
      [31, 0.491],
      [34, 0.368],
      [48, 0.184],
    ])
  })

  it('heart transplants with late entry', () => {
    const curve = curves.find((item) => item.name.startsWith('heart'))
    expect(curve).toBeDefined()
    const rows = readCsv(data('third-party/heart.csv'))
    for (const stratum of curve?.strata ?? []) {
      const own = rows.filter((row) => (curve?.strata.length ?? 0) < 2 || stratum.stratum === `transplant=${row.transplant}`)
      const steps = kaplanMeier(own.map((row) => ({ age: Number(row.stop), failed: row.event === '1', entry: Number(row.start) })))
      stratum.time.forEach(
        (time, i) => void expect(survivalAt(steps, time), `${stratum.stratum} ${time}`).toBeCloseTo(stratum.surv[i] ?? Number.NaN, 12),
      )
    }
  })
})
