import type { BedForecastInput } from '@almanac/forecast/bed-forecast/bed-forecast-types'
import { forecastBed } from '@almanac/forecast/bed-forecast/forecast-bed'
import type { ForecastParameters } from '@almanac/forecast/priors/forecast-parameters'
import { tradePriors } from '@almanac/forecast/priors/trade-priors'
import { parseDay } from '@almanac/units/calendar/day-number'
import { describe, expect, it } from 'vitest'

const SHAPE = 3
const SCALE = 12

/** Weibull 3, 12 on clean water without any doubt: what is left is the textbook's conditional life. */
function certain(): ForecastParameters {
  const prior = tradePriors()
  const logMean = [...prior.logMean]
  logMean[0] = Math.log(SCALE * Math.LN2 ** (1 / SHAPE))
  logMean[1] = Math.log(SHAPE)
  return { ...prior, version: 'certain', logMean, logCovariance: prior.logCovariance.map(() => 0) }
}

function forecast(change: Partial<BedForecastInput>) {
  const input: BedForecastInput = {
    asOfDay: '2026-01-01',
    beginning: { earliestDay: '2018-01-01', latestDay: '2018-01-01' },
    lastSeenDay: '2026-01-01',
    crosslinkPercent: 8,
    resinVolumeFt3: null,
    gallonsPerDay: null,
    // Measured, so that no doubt about the water remains.
    water: {
      supplyPeriods: [],
      tests: [{ day: '2000-01-01', point: 'softener-inlet', freeChlorineMgL: 0, totalChlorineMgL: 0, ironMgL: 0 }],
      preTreatments: [],
    },
    ...change,
  }
  const result = forecastBed(input, certain())
  if (!result.ok) throw new Error(result.reason)
  return result.value
}
const survival = (years: number) => Math.exp(-((Math.max(0, years) / SCALE) ** SHAPE))
const years = (from: string, to: string) => ((parseDay(to) ?? Number.NaN) - (parseDay(from) ?? Number.NaN)) / 365.2425

describe('a bed’s chances against p = 1 − exp[(a/η)^β − ((a+w)/η)^β], β 3, η 12, w 1 (derived by hand)', () => {
  it.each([
    ['2021-01-01', 0.051299],
    ['2018-01-01', 0.118014],
    ['2016-01-01', 0.174322],
    ['2014-01-01', 0.237698],
  ])('in service since %s: %d within twelve months', (day, expected) => {
    // A year of 365 days and leap days in the age move the chance by less than one in a thousand of itself.
    expect(forecast({ beginning: { earliestDay: day, latestDay: day } }).chance12Months).toBeCloseTo(expected, 3)
  })

  it('has due dates at the conditional quantiles a·[1 + (−ln(1−p))/(a/η)^β]^(1/β)', () => {
    const value = forecast({})
    const age = years('2018-01-01', '2026-01-01')
    for (const [p, day] of [
      [0.1, value.due10Day],
      [0.5, value.due50Day],
      [0.9, value.due90Day],
    ] as const) {
      const expected = age * (1 - Math.log(1 - p) / (age / SCALE) ** SHAPE) ** (1 / SHAPE)
      expect(Math.abs(years('2018-01-01', day) - expected) * 365).toBeLessThan(3)
    }
  })

  it('counts from the day last seen: what happened since is the chance of having failed already', () => {
    const value = forecast({ lastSeenDay: '2022-01-01' })
    const [seen, now] = [years('2018-01-01', '2022-01-01'), years('2018-01-01', '2026-01-01')]
    expect(value.chanceAlreadyFailed).toBeCloseTo(1 - survival(now) / survival(seen), 6)
    expect(value.chance12Months).toBeCloseTo(1 - survival(now + 365 / 365.2425) / survival(now), 6)
    let months = 0
    for (const chance of value.monthChances) months += chance
    const end = years('2018-01-01', '2031-01-01')
    expect(months).toBeCloseTo((survival(now) - survival(end)) / survival(seen), 4)
  })

  it('averages over an unknown beginning, late ones likelier since the bed still works', () => {
    const value = forecast({ beginning: { earliestDay: '1998-01-01', latestDay: '2018-01-01' } })
    const [least, most] = [years('2018-01-01', '2026-01-01'), years('1998-01-01', '2026-01-01')]
    const mean = (after: number) => {
      let sum = 0
      for (let i = 0; i < 4000; i++) sum += survival(least + ((i + 0.5) / 4000) * (most - least) + after)
      return sum
    }
    expect(value.chance12Months).toBeCloseTo(1 - mean(365 / 365.2425) / mean(0), 2)
    // Without that weighting the mean age would be 18 years and the chance more than double.
    const unweighted = 1 - survival(19) / survival(18)
    expect(value.chance12Months).toBeLessThan(unweighted / 1.5)
  })
})
