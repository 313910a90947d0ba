import { isoDay, parseDay } from '@almanac/units/calendar/day-number'
import { describe, expect, it } from 'vitest'
import { forecastBed } from '../bed-forecast/forecast-bed.ts'
import type { ForecastParameters } from '../priors/forecast-parameters.ts'
import { tradePriors } from '../priors/trade-priors.ts'
import type { BedRecord } from './bed-record.ts'
import { fitBedRecords } from './fit-bed-records.ts'

const PRIOR = tradePriors()
const AS_OF_DAY = '2026-01-01'
const AS_OF = parseDay(AS_OF_DAY) as number

const working = (years: number): BedRecord => ({
  beginning: { earliestDay: isoDay(AS_OF - Math.round(years * 365.2425)), latestDay: isoDay(AS_OF - Math.round(years * 365.2425)) },
  firstSeenDay: null,
  lastSeenDay: AS_OF_DAY,
  visitDays: [AS_OF_DAY],
  end: null,
  crosslinkPercent: 8,
  resinVolumeFt3: 1.5,
  gallonsPerDay: 138,
  water: {
    supplyPeriods: [{ fromDay: '1990-01-01', disinfectant: 'free-chlorine', disinfectantMgL: 0.8, hardnessGpg: 15, ironMgL: 0 }],
    tests: [],
    preTreatments: [],
  },
})
const failed = (years: number, agoDays: number): BedRecord => ({
  ...working(years),
  lastSeenDay: isoDay(AS_OF - agoDays - 60),
  visitDays: [isoDay(AS_OF - agoDays - 60)],
  end: { earliestDay: isoDay(AS_OF - agoDays - 60), latestDay: isoDay(AS_OF - agoDays), cause: 'failed' },
})

/** 200 beds of 15 to 20 years, all of them working. */
const OLD = Array.from({ length: 200 }, (_, i) => working(15 + (5 * i) / 199))

function parametersOf(records: readonly BedRecord[]): ForecastParameters {
  const fit = fitBedRecords(records, PRIOR, AS_OF_DAY, 'tested')
  if (!fit.ok) throw new Error(fit.reason)
  return fit.value.parameters
}

function expectedInYear(parameters: ForecastParameters): number {
  return OLD.reduce((sum, record) => {
    const found = forecastBed({ ...record, asOfDay: AS_OF_DAY }, parameters, 'figures')
    if (!found.ok) throw new Error(found.reason)
    return sum + found.value.monthChances.slice(0, 12).reduce((all, chance) => all + chance, 0)
  }, 0)
}

describe('a firm without a failure on record', () => {
  it('learns from its survivors: of 200 working beds of 15 to 20 years few are expected to fail in a year', () => {
    expect(expectedInYear(PRIOR)).toBeGreaterThan(40)
    expect(expectedInYear(parametersOf(OLD))).toBeLessThan(4)
  })

  it('meets no cliff at the first failure: each further one raises what is expected by a little', () => {
    const counts = [0, 1, 2, 3].map((n) =>
      expectedInYear(parametersOf([...OLD, ...Array.from({ length: n }, (_, i) => failed(16 + i, 200 + 90 * i))])),
    )
    for (let n = 1; n < counts.length; n++) {
      expect(counts[n] as number).toBeGreaterThan(counts[n - 1] as number)
      // A failure more among two hundred beds is a failure more a year at the very most, not another order of size.
      expect((counts[n] as number) - (counts[n - 1] as number)).toBeLessThan(2)
    }
  })

  it('with young beds alone stays at the trade’s first guesses: they say next to nothing', () => {
    const young = parametersOf(Array.from({ length: 50 }, () => working(1)))
    young.logMean.forEach((mean, i) => {
      expect(Math.abs(mean - (PRIOR.logMean[i] as number))).toBeLessThan(0.1)
    })
  })

  it('and without a record keeps the first guesses, and says so', () => {
    expect(fitBedRecords([], PRIOR, AS_OF_DAY, 'tested')).toMatchObject({
      ok: false,
      reason: expect.stringMatching(/first guesses stay in use\.$/),
    })
  })
})
