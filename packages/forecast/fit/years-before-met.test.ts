import { describe, expect, it } from 'vitest'
import { speakingIn } from '../../../tests/support/forecast-speaking.ts'
import { forecastBed } from '../bed-forecast/forecast-bed.ts'
import { tradePriors } from '../priors/trade-priors.ts'
import type { BedRecord } from './bed-record.ts'
import { fitBedRecords } from './fit-bed-records.ts'
import { yearsBeforeMet } from './years-before-met.ts'

const AS_OF = '2026-01-01'
const PRIOR = tradePriors()

const bed = (began: string | null, met: string | null, more: Partial<BedRecord> = {}): BedRecord => ({
  beginning: { earliestDay: began, latestDay: began },
  firstSeenDay: met,
  lastSeenDay: met,
  end: null,
  customerCalls: true,
  crosslinkPercent: 8,
  resinVolumeFt3: null,
  gallonsPerDay: null,
  water: {
    supplyPeriods: [{ fromDay: '1990-01-01', disinfectant: 'none', disinfectantMgL: null, hardnessGpg: 15, ironMgL: 0 }],
    tests: [],
    preTreatments: [],
  },
  ...more,
})

describe('how old beds are when a firm meets them', () => {
  it('is the mean of those whose beginning is known, with three beds of twenty years before any record (by hand)', () => {
    expect(yearsBeforeMet([], AS_OF)).toBe(20)
    const known = [bed('2010-01-01', '2011-01-01'), bed('2000-01-01', '2003-01-01')]
    expect(yearsBeforeMet(known, AS_OF)).toBeCloseTo((60 + 1 + 3) / 5, 2)
    const silent = [
      bed(null, '2015-01-01'),
      bed('2010-01-01', null),
      bed('2010-01-01', '2027-01-01'),
      bed('2010-01-01', '2011-01-01', { beginning: { earliestDay: '2000-01-01', latestDay: '2010-12-31' } }),
    ]
    expect(yearsBeforeMet([...known, ...silent], AS_OF)).toBeCloseTo((60 + 1 + 3) / 5, 2)
  })

  it('tells how old a bed of unknown beginning is: as the others were, not up to twenty years', () => {
    const stranger = bed(null, '2015-01-01', { lastSeenDay: '2015-01-01' })
    const firmOf = (years: number) =>
      Array.from({ length: 60 }, (_, i) => bed(`${2014 - (i % 5)}-01-01`, `${2014 - (i % 5) + years}-01-01`))
    const said = (years: number) => {
      const fit = fitBedRecords([...firmOf(years), stranger], PRIOR, AS_OF, 'met')
      if (!fit.ok) throw new Error(fit.reason)
      // The firm's lives are held: only what it says of strangers may differ.
      const found = forecastBed(
        { ...stranger, asOfDay: AS_OF, speaking: speakingIn('en-US') },
        { ...PRIOR, yearsBeforeMet: fit.value.parameters.yearsBeforeMet ?? Number.NaN },
      )
      if (!found.ok) throw new Error(found.reason)
      return { ...found.value, assumptions: found.assumptions }
    }
    const [young, old] = [said(1), said(8)]
    // (60 + 60 · 1)/63 = 1.9 years on average, four times that at most.
    expect(young.beginning.earliestDay.slice(0, 4)).toBe('2007')
    expect(old.beginning.earliestDay.slice(0, 4)).toBe('1995')
    expect(young.due50Day > old.due50Day).toBe(true)
    expect(young.assumptions.join(' ')).toMatch(/late rather than early/)
  })
})
