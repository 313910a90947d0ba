import type { Disinfectant } from '@almanac/records/disinfectant'
import { parseDay } from '@almanac/units/calendar/day-number'
import { describe, expect, it } from 'vitest'
import { speakingIn } from '../../../tests/support/forecast-speaking.ts'
import { tradePriors } from '../priors/trade-priors.ts'
import type { BedForecast, BedForecastInput } from './bed-forecast-types.ts'
import { forecastBed } from './forecast-bed.ts'

const PARAMETERS = tradePriors()

function town(disinfectant: Disinfectant, mgL: number, ironMgL = 0): BedForecastInput['water'] {
  return {
    supplyPeriods: [{ fromDay: '2000-01-01', disinfectant, disinfectantMgL: mgL, hardnessGpg: 15, ironMgL }],
    tests: [],
    preTreatments: [],
  }
}

const BASE: BedForecastInput = {
  asOfDay: '2026-06-15',
  beginning: { earliestDay: '2018-05-01', latestDay: '2018-05-01' },
  lastSeenDay: '2026-03-01',
  crosslinkPercent: 8,
  resinVolumeFt3: 1.5,
  gallonsPerDay: 138,
  water: town('free-chlorine', 0.8),
  speaking: speakingIn('en-US'),
}

function forecast(change: Partial<BedForecastInput> = {}): BedForecast {
  const result = forecastBed({ ...BASE, ...change }, PARAMETERS)
  if (!result.ok) throw new Error(result.reason)
  return result.value
}
const due = (change: Partial<BedForecastInput> = {}) => parseDay(forecast(change).due50Day) ?? Number.NaN
const ribbon = (value: BedForecast) => (parseDay(value.due90Day) ?? Number.NaN) - (parseDay(value.due10Day) ?? Number.NaN)

describe('what moves a due date', () => {
  it('comes earlier with more chlorine, chloramine, iron and use', () => {
    expect(due({ water: town('free-chlorine', 2) })).toBeLessThan(due())
    expect(due({ water: town('chloramine', 2.5) })).toBeLessThan(due({ water: town('chloramine', 1) }))
    expect(due({ water: town('none', 0, 2) })).toBeLessThan(due({ water: town('none', 0, 0.3) }))
    expect(due({ gallonsPerDay: 400 })).toBeLessThan(due())
  })

  it('comes later with carbon ahead, 10% crosslink and a later day last seen', () => {
    const water = { ...BASE.water, preTreatments: [{ kind: 'carbon' as const, fromDay: '2020-01-01', toDay: null }] }
    expect(due({ water })).toBeGreaterThan(due())
    expect(due({ crosslinkPercent: 10 })).toBeGreaterThan(due())
    expect(due({ lastSeenDay: '2026-03-01' })).toBeGreaterThan(due({ lastSeenDay: '2020-03-01' }))
  })

  it('moves when a town turns to chloramine, from that day on', () => {
    const change = { fromDay: '2022-01-01', disinfectant: 'chloramine' as const, disinfectantMgL: 2.5, hardnessGpg: 15, ironMgL: 0 }
    const turned = forecast({ water: { ...BASE.water, supplyPeriods: [...BASE.water.supplyPeriods, change] } })
    expect(parseDay(turned.due50Day)).toBeLessThan(due())
    expect(turned.drivers.find((d) => d.key === 'chloramine')?.words).toMatch(/^chloramine 2.5 mg\/L since 2022: \d\.\d years shorter$/)
  })

  it('is blurred by an uncertain beginning, which then is the question to ask', () => {
    const year = forecast({ beginning: { earliestDay: '2012-01-01', latestDay: '2024-12-31' } })
    expect(ribbon(year)).toBeGreaterThan(ribbon(forecast({ beginning: { earliestDay: '2018-05-01', latestDay: '2018-05-20' } })))
    expect(year.weakness.question).toBe('beginning')
    expect(year.weakness.years).toBeGreaterThan(forecast().weakness.years)
  })

  it('is sharpened by a test of the water', () => {
    const tested = {
      ...BASE.water,
      tests: [{ day: '2020-01-01', point: 'softener-inlet' as const, freeChlorineMgL: 0.8, totalChlorineMgL: 0.8 }],
    }
    expect(ribbon(forecast({ water: tested }))).toBeLessThan(
      ribbon(forecast({ water: { supplyPeriods: [], tests: [], preTreatments: [] } })),
    )
  })

  it('knows nothing of a test dated after the day of the forecast', () => {
    const later = { ...BASE.water, tests: [{ day: '2026-06-16', point: 'raw' as const, freeChlorineMgL: 3.5 }] }
    expect(forecast({ water: later }).due50Day).toBe(forecast().due50Day)
  })
})

describe('how the figures hang together', () => {
  it('adds months, past failures and later years up to one', () => {
    const value = forecast({ lastSeenDay: '2022-03-01' })
    const months = value.monthChances.reduce((sum, chance) => sum + chance, 0)
    expect(value.monthChances).toHaveLength(60)
    expect(value.firstMonth).toBe('2026-06')
    expect(value.chanceAlreadyFailed).toBeGreaterThan(0.05)
    expect(months + value.chanceAlreadyFailed).toBeLessThan(1)
    // One year from the as-of day against its twelve calendar months: half a month's difference at most.
    const year = value.monthChances.slice(0, 13).reduce((sum, chance) => sum + chance, 0)
    expect(value.chance12Months * (1 - value.chanceAlreadyFailed)).toBeLessThanOrEqual(year + 1e-6)
    expect(value.chance3Months).toBeLessThan(value.chance12Months)
    expect(value.chance12Months).toBeLessThan(value.chance24Months)
  })

  it('gives month chances that are the mean of those at the shared nodes', () => {
    const value = forecast()
    const nodes = value.nodeMonthChances.length / 60
    for (const month of [0, 7, 59]) {
      let sum = 0
      for (let k = 0; k < nodes; k++) sum += value.nodeMonthChances[k * 60 + month] ?? Number.NaN
      expect(sum / nodes).toBeCloseTo(value.monthChances[month] ?? Number.NaN, 14)
    }
  })

  it('draws a curve that falls from one and passes a half at the middle due date', () => {
    const value = forecast()
    value.curve.forEach((point, i) => {
      expect(point.low).toBeLessThanOrEqual(point.mid + 1e-12)
      expect(point.mid).toBeLessThanOrEqual(point.high + 1e-12)
      if (i > 0) expect(point.mid).toBeLessThanOrEqual(value.curve[i - 1]?.mid ?? 0)
    })
    const before = value.curve.filter((point) => point.day <= value.due50Day).at(-1)
    const after = value.curve.find((point) => point.day > value.due50Day)
    expect(before?.mid).toBeGreaterThanOrEqual(0.5 - 1e-3)
    expect(after?.mid).toBeLessThanOrEqual(0.5 + 1e-3)
  })

  it('lets the drivers add up to the difference between clean and typical life', () => {
    const beginning = { earliestDay: '2024-05-01', latestDay: '2024-05-01' }
    const value = forecast({ beginning, crosslinkPercent: 10, water: town('chloramine', 2, 0.8) })
    const sum = value.drivers.reduce((total, driver) => total + driver.yearsTaken, 0)
    expect(sum).toBeCloseTo(value.medianCleanLifeYears - value.medianLifeYears, 6)
  })
})

describe('doubtful records', () => {
  it.each([
    [{ lastSeenDay: '2017-01-01' }, /went in only on May 1, 2018/],
    [{ lastSeenDay: '2027-01-01' }, /after Jun 15, 2026/],
    [{ beginning: { earliestDay: '2020-01-01', latestDay: '2019-01-01' } }, /later than the second/],
    [{ beginning: { earliestDay: '2027-01-01', latestDay: '2027-01-01' }, lastSeenDay: null }, /after the day of this forecast/],
    [{ beginning: { earliestDay: '2018-02-30', latestDay: null } }, /isn’t a real date/],
    [{ water: town('free-chlorine', -2) }, /-2 mg\/L/],
    [{ crosslinkPercent: 80 }, /80%/],
    [{ resinVolumeFt3: 0 }, /0 ft³/],
    [{ gallonsPerDay: Number.NaN }, /NaN gal\/day/],
    [{ asOfDay: 'today' }, /t a real date/],
  ])('refuses %j with a sentence', (change, reason) => {
    const result = forecastBed({ ...BASE, ...(change as Partial<BedForecastInput>) }, PARAMETERS)
    expect(result.ok).toBe(false)
    if (!result.ok) expect(result.reason).toMatch(reason)
  })

  it('never yields a figure that is no number, whatever is unknown', () => {
    const days = [null, '1985-01-01', '2014-12-31', '2026-06-15']
    for (const earliestDay of days) {
      for (const latestDay of days) {
        for (const lastSeenDay of days) {
          const water = { supplyPeriods: [], tests: [], preTreatments: [] }
          const blank = { crosslinkPercent: null, gallonsPerDay: null, resinVolumeFt3: null, water }
          const result = forecastBed({ ...BASE, ...blank, beginning: { earliestDay, latestDay }, lastSeenDay }, PARAMETERS)
          if (!result.ok) continue
          const v = result.value
          const figures = [
            v.chanceAlreadyFailed,
            v.chance3Months,
            v.chance12Months,
            v.chance24Months,
            v.medianLifeYears,
            v.weakness.years,
            ...v.monthChances,
          ]
          expect(figures.every(Number.isFinite), JSON.stringify({ earliestDay, latestDay, lastSeenDay })).toBe(true)
          for (const day of [v.due10Day, v.due50Day, v.due90Day]) expect(parseDay(day)).not.toBeNull()
          expect(v.due10Day <= v.due50Day && v.due50Day <= v.due90Day).toBe(true)
          expect(JSON.stringify(v.exposure)).not.toContain('Infinity')
        }
      }
    }
  })

  it('says what it assumed of a bed that nobody saw again', () => {
    const result = forecastBed({ ...BASE, lastSeenDay: null }, PARAMETERS)
    expect(result.ok && result.assumptions.join(' ')).toContain('We assume the bed worked on May 1, 2018')
    const british = forecastBed({ ...BASE, lastSeenDay: null, speaking: speakingIn('en-GB') }, PARAMETERS)
    expect(british.ok && british.assumptions.join(' ')).toContain('We assume the bed worked on 1 May 2018')
    expect(british.ok && british.value.explanation.inputs.slice(0, 2).map((one) => one.value)).toEqual(['1 May 2018', '1 May 2018'])
    expect(result.ok && result.missing).toContain('Not seen since it went in.')
  })
})
