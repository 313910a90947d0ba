import { forecastBed } from '@almanac/forecast/bed-forecast/forecast-bed'
import type { BedRecord } from '@almanac/forecast/fit/bed-record'
import { fitBedRecords } from '@almanac/forecast/fit/fit-bed-records'
import { fitLifetime } from '@almanac/forecast/fit/fit-lifetime'
import { countMonths } from '@almanac/forecast/fleet/month-counts'
import { kaplanMeier, survivalAt } from '@almanac/forecast/lifetime/kaplan-meier'
import { conditionalFailureChance } from '@almanac/forecast/lifetime/weibull'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { AS_OF, type WorldBed } from './simulate-world.ts'

const YEAR = 365.2425
const iso = (day: number) => new Date(day * 86_400_000).toISOString().slice(0, 10)

/** The record as the app hands it to the model. */
function asRecord(bed: WorldBed): BedRecord {
  const last = bed.looks.at(-1) ?? null
  const worked = bed.out?.cause === 'removed' ? bed.out.day : (last ?? bed.begun?.to ?? null)
  return {
    beginning: { earliestDay: bed.begun && iso(bed.begun.from), latestDay: bed.begun && iso(bed.begun.to) },
    firstSeenDay: bed.met === null ? null : iso(bed.met),
    listedDay: bed.listed === null ? null : iso(bed.listed),
    lastSeenDay: last === null ? null : iso(last),
    visitDays: bed.looks.map(iso),
    end: bed.out && {
      earliestDay: iso(Math.min(worked ?? bed.out.day, bed.out.day)),
      latestDay: iso(bed.out.day),
      cause: bed.out.cause === 'removed' ? 'removed-early' : bed.out.cause,
    },
    customerCalls: true,
    crosslinkPercent: 8,
    resinVolumeFt3: null,
    gallonsPerDay: null,
    supply: bed.supply,
    water: {
      supplyPeriods:
        bed.supply === null
          ? []
          : [{ fromDay: '1980-01-01', disinfectant: 'free-chlorine', disinfectantMgL: bed.chlorineMgL, hardnessGpg: 15, ironMgL: 0 }],
      tests: [],
      preTreatments: [],
    },
  }
}

export interface FirmVerdict {
  readonly beds: number
  /** Beds whose day of failing lies in their 80 % window, of those in service on record. */
  readonly inWindow: number
  /** Whether the count of failures to come lies between the 10 and the 90 % point, in 12 and in 24 months. */
  readonly countHit: readonly [boolean, boolean]
  readonly expected: readonly [number, number]
  readonly came: readonly [number, number]
  readonly overdueSaid: number
  readonly overdueTrue: number
  /** Mean squared errors of the chance of having failed in 12 and 24 months, together: the forecast's, by age alone, by Kaplan–Meier. */
  readonly brier: { readonly forecast: number; readonly weibull: number; readonly kaplanMeier: number }
}

const HORIZONS = [12, 24] as const

/** Fits a firm's records, forecasts its beds and holds all of it against what is true. Null where nothing is in service. */
export function judgeFirm(beds: readonly WorldBed[], prior: ForecastParameters, random: () => number): FirmVerdict | null {
  const records = beds.map(asRecord)
  const fit = fitBedRecords(records, prior, iso(AS_OF), 'world')
  const parameters = fit.ok ? fit.value.parameters : prior
  const counters = HORIZONS.map(() => countMonths(1))
  const byAge = ageRules(beds)
  const sums = { inWindow: 0, expected: [0, 0], came: [0, 0], said: 0, true: 0, forecast: 0, weibull: 0, kaplanMeier: 0, beds: 0 }
  beds.forEach((bed, i) => {
    if (bed.out !== null) return
    const found = forecastBed({ ...(records[i] as BedRecord), asOfDay: iso(AS_OF) }, parameters, 'figures')
    if (!found.ok) throw new Error(found.reason)
    const { value } = found
    sums.beds++
    const failsDay = iso(bed.failsOn)
    if (failsDay >= value.due10Day && failsDay <= value.due90Day) sums.inWindow++
    sums.said += value.chanceAlreadyFailed
    if (bed.failsOn <= AS_OF) sums.true++
    HORIZONS.forEach((months, h) => {
      const until = Date.UTC(2024, months, 1) / 86_400_000
      const chance = value.monthChances.slice(0, months).reduce((sum, one) => sum + one, 0)
      counters[h]?.add({ monthChances: [chance], nodeMonthChances: summed(value.nodeMonthChances, value.monthChances.length, months) })
      sums.expected[h] = (sums.expected[h] as number) + chance
      if (bed.failsOn > AS_OF && bed.failsOn <= until && bed.removedOn > bed.failsOn) sums.came[h] = (sums.came[h] as number) + 1
      const truth = bed.failsOn <= until ? 1 : 0
      const age = ageOn(bed, AS_OF)
      const later = age + (until - AS_OF) / YEAR
      sums.forecast += (value.chanceAlreadyFailed + chance - truth) ** 2
      sums.weibull += (byAge.weibull(age, later) - truth) ** 2
      sums.kaplanMeier += (byAge.kaplanMeier(age, later) - truth) ** 2
    })
  })
  if (sums.beds === 0) return null
  const hit = (h: 0 | 1) => {
    const { first, chance } = counters[h]?.distribution(0) ?? { first: 0, chance: Float64Array.of(1) }
    const came = sums.came[h] as number
    let below = 0
    for (let k = 0; k < chance.length && first + k < came; k++) below += chance[k] as number
    const place = below + random() * (chance[came - first] ?? 0)
    return place >= 0.1 && place <= 0.9
  }
  const mean = (sum: number) => sum / (HORIZONS.length * sums.beds)
  return {
    ...{ beds: sums.beds, inWindow: sums.inWindow, countHit: [hit(0), hit(1)] },
    ...{ expected: [sums.expected[0] ?? 0, sums.expected[1] ?? 0], came: [sums.came[0] ?? 0, sums.came[1] ?? 0] },
    ...{ overdueSaid: sums.said, overdueTrue: sums.true },
    brier: { forecast: mean(sums.forecast), weibull: mean(sums.weibull), kaplanMeier: mean(sums.kaplanMeier) },
  }
}

/** Chance within the first months at each node. */
function summed(chances: Float64Array, stride: number, months: number): Float64Array {
  return Float64Array.from({ length: chances.length / stride }, (_, k) =>
    chances.subarray(k * stride, k * stride + months).reduce((sum, one) => sum + one, 0),
  )
}

/** Age in years, an unknown beginning at ten years before the bed was first seen. */
function ageOn(bed: WorldBed, day: number): number {
  const begun = bed.begun === null ? (bed.looks[0] ?? bed.listed ?? AS_OF) - 10 * YEAR : (bed.begun.from + bed.begun.to) / 2
  return Math.max(0.1, (day - begun) / YEAR)
}

/** Rules of age alone, as an office would fit them: failed on the day it came out, working today where nobody called. */
function ageRules(beds: readonly WorldBed[]) {
  const lives = beds.flatMap((bed) => {
    const met = bed.met ?? bed.listed
    const entry = met === null ? 0 : ageOn(bed, met)
    const age = ageOn(bed, bed.out?.day ?? AS_OF)
    return age > entry ? [{ entry, age, failed: bed.out !== null && bed.out.cause !== 'removed' }] : []
  })
  const fit = fitLifetime(
    lives.map(({ entry, age, failed }) => ({ entry, lower: age, upper: failed ? age : Number.POSITIVE_INFINITY })),
    'weibull',
  )
  // Without a failure nothing can be fitted: twelve years, the middle of what the trade says.
  const life = fit.ok ? { shape: 1 / fit.value.scale, scale: Math.exp(fit.value.coefficients[0] as number) } : { shape: 3, scale: 13.5 }
  const steps = kaplanMeier(lives)
  return {
    weibull: (age: number, later: number) => conditionalFailureChance(life, age, later - age),
    kaplanMeier: (age: number, later: number) => {
      const before = survivalAt(steps, age)
      return before > 0 ? 1 - survivalAt(steps, later) / before : 1
    },
  }
}
