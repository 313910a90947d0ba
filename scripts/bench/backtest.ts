import { backtest, type Method } from '@almanac/forecast/backtest/rolling-origin'
import type { SupplyPeriod } from '@almanac/forecast/exposure/water-types'
import { seeded } from '@almanac/forecast/numeric/seeded'
import { type ForecastParameters, PARAMETER_KEYS, type ParameterValues } from '@almanac/forecast/priors/forecast-parameters'
import { centralValues } from '@almanac/forecast/priors/parameter-nodes'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { type FirmPlan, simulateFirm } from './simulate/simulate-firm.ts'

type Bench = { args: string[]; say: (line: string) => void }
type Row = Method | 'perfect knowledge'

const usage = 'npm run bench -- backtest [--firms 8] [--beds 1500] [--seed 1]'
const ORIGINS = ['2018-01-01', '2019-01-01', '2020-01-01', '2021-01-01', '2022-01-01', '2023-01-01', '2024-01-01']
const AS_OF = '2026-01-01'
const PRIOR = tradePriors()

function option(args: string[], name: string, usual: number, least: number): number {
  const at = args.findIndex((arg) => arg === `--${name}` || arg.startsWith(`--${name}=`))
  const found = args[at]
  const value = found === undefined ? usual : Number(found.includes('=') ? found.slice(name.length + 3) : args[at + 1])
  if (!Number.isInteger(value) || value < least) throw new Error(`--${name} must be a whole number from ${least} on. Usage: ${usage}`)
  return value
}

const water = (fromDay: string, disinfectant: SupplyPeriod['disinfectant'], mgL: number | null, ironMgL = 0): SupplyPeriod => ({
  fromDay,
  disinfectant,
  disinfectantMgL: mgL,
  hardnessGpg: 15,
  ironMgL,
})

/** A region of unlike waters, invented: towns from 0.2 to 3 mg/L free chlorine, two that turned to chloramine, wells with and without iron. */
const UNLIKE: readonly (readonly SupplyPeriod[])[] = [
  [water('1990-01-01', 'free-chlorine', 0.2)],
  [water('1990-01-01', 'free-chlorine', 1)],
  [water('1990-01-01', 'free-chlorine', 3)],
  [water('1990-01-01', 'free-chlorine', 0.8), water('2012-05-01', 'chloramine', 2.4)],
  [water('1990-01-01', 'free-chlorine', 0.5), water('2019-03-01', 'chloramine', 3)],
  [water('1990-01-01', 'none', null, 2)],
  [water('1990-01-01', 'none', null)],
]

const centre = centralValues(PRIOR)
const acting: ParameterValues = { ...centre, shape: 4, chlorineExponent: 0.9, chloramineWeight: 1.5 }
const idle: ParameterValues = { ...centre, chlorineExponent: 1e-6, ironExponent: 1e-6, crosslinkEffect: 1e-6, throughputExponent: 1e-6 }

const usual = { asOfDay: AS_OF, lateEntryShare: 0.3, earlyRemovalShare: 0.1 }

/** Where exposures matter at all, and where nothing but age does. */
const SCENARIOS: readonly { readonly name: string; readonly matters: boolean; readonly plan: Omit<FirmPlan, 'beds'> }[] = [
  { name: 'unlike waters, exposures act', matters: true, plan: { ...usual, truth: acting, waters: UNLIKE } },
  { name: 'unlike waters, trade’s own guess', matters: true, plan: { ...usual, truth: centre, waters: UNLIKE } },
  { name: 'three towns, two wells, exposures act', matters: true, plan: { ...usual, truth: acting } },
  { name: 'the same, supplies differ by 15 %', matters: true, plan: { ...usual, truth: acting, supplySpread: 0.15 } },
  { name: 'only age acts', matters: false, plan: { ...usual, truth: idle, waters: UNLIKE } },
  { name: 'only age acts, lognormal lives', matters: false, plan: { ...usual, truth: idle, family: 'lognormal' } },
]

/** The truth as parameters without doubt. */
function knownTruth(plan: Omit<FirmPlan, 'beds'>): ForecastParameters {
  return {
    ...PRIOR,
    version: 'truth',
    family: plan.family ?? 'weibull',
    logMean: PARAMETER_KEYS.map((key) => Math.log(plan.truth[key])),
    logCovariance: PRIOR.logCovariance.map(() => 0),
  }
}

/**
 * Simulated firms with known truth, with and without exposure effects: integrated Brier score of the forecast against rules that know only age, and against the
 * forecast that knows the truth, which is all that any forecast could gain. Prints a table; returns the figures.
 */
export default async function measureBacktest({ args, say }: Bench) {
  const firms = option(args, 'firms', 8, 1)
  const beds = option(args, 'beds', 1500, 50)
  const seed = option(args, 'seed', 1, 0)
  say(
    `${firms} firms of ${beds} beds each, stood on ${ORIGINS.length} new year’s days. Integrated Brier score over 6, 12, 18 and 24 months; gain in per cent.`,
  )
  say(`${'firm'.padEnd(40)} forecast   over age-only Weibull  over Kaplan–Meier  over 12 years  by knowing the truth  windows of 80 %`)
  const table = SCENARIOS.map(({ name, matters, plan }, place) => {
    const gains = { weibull: [] as number[], kaplanMeier: [] as number[], fixed: [] as number[], truth: [] as number[] }
    const scores: number[] = []
    const coverages: number[] = []
    for (let firm = 0; firm < firms; firm++) {
      const own = 100_000 * seed + 1000 * place + firm
      const records = simulateFirm({ ...plan, beds }, seeded(own), PRIOR).map((bed) => bed.record)
      const found = backtest(records, PRIOR, ORIGINS, seeded(own + 500))
      // Supplies' own effects cannot be handed over, so that the truth without them is no ceiling there.
      const best =
        plan.supplySpread === undefined ? backtest(records, PRIOR, ORIGINS, seeded(own + 500), { known: knownTruth(plan) }) : found
      if (!found.ok || !best.ok) throw new Error(found.ok ? 'The truth could not be held against the past.' : found.reason)
      const score = (row: Row) =>
        (row === 'perfect knowledge' ? best : found).value.scores.find(
          ({ method }) => method === (row === 'perfect knowledge' ? 'forecast' : row),
        )?.integratedBrier ?? Number.NaN
      const gain = (of: Row, over: Row) => 100 * (1 - score(of) / score(over))
      scores.push(score('forecast'))
      gains.weibull.push(gain('forecast', 'age-only Weibull'))
      gains.kaplanMeier.push(gain('forecast', 'Kaplan–Meier'))
      gains.fixed.push(gain('forecast', 'fixed age'))
      gains.truth.push(gain('perfect knowledge', 'age-only Weibull'))
      coverages.push(found.value.coverage80)
    }
    const row = {
      name,
      matters,
      brier: mean(scores),
      overWeibull: mean(gains.weibull),
      overWeibullError: standardError(gains.weibull),
      overKaplanMeier: mean(gains.kaplanMeier),
      overFixedAge: mean(gains.fixed),
      truthOverWeibull: plan.supplySpread === undefined ? mean(gains.truth) : null,
      coverage80: mean(coverages),
    }
    const ceiling = row.truthOverWeibull === null ? '–' : `${row.truthOverWeibull.toFixed(1)} %`
    say(
      `${name.padEnd(40)} ${row.brier.toFixed(5)}    ${`${row.overWeibull.toFixed(1)} ± ${row.overWeibullError.toFixed(1)} %`.padStart(15)} ${`${row.overKaplanMeier.toFixed(1)} %`.padStart(18)} ${`${row.overFixedAge.toFixed(1)} %`.padStart(14)} ${ceiling.padStart(18)} ${row.coverage80.toFixed(3).padStart(16)}`,
    )
    return row
  })
  return { firms, beds, seed, table }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

function standardError(values: readonly number[]): number {
  const centre = mean(values)
  return Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / Math.max(1, values.length - 1) / values.length)
}
