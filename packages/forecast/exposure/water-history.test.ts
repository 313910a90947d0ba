import { describe, expect, it } from 'vitest'
import { speakingIn } from '../../../tests/support/forecast-speaking.ts'
import { waterHistory } from './water-history.ts'
import type { SupplyPeriod, WaterHistoryInput } from './water-types.ts'

const EN = speakingIn('en-US')
const ASSUMED = { freeChlorineMgL: 0.8, chloramineMgL: 2, unknownSupplyFreeChlorineMgL: 0.7, ironMgL: 0 }
const period = (
  fromDay: string,
  disinfectant: SupplyPeriod['disinfectant'],
  disinfectantMgL: number | null,
  ironMgL: number | null = 0,
): SupplyPeriod => ({
  fromDay,
  disinfectant,
  disinfectantMgL,
  hardnessGpg: 15,
  ironMgL,
})
const EMPTY: WaterHistoryInput = { supplyPeriods: [], tests: [], preTreatments: [] }

function steps(input: Partial<WaterHistoryInput>, begin = '2010-01-01', asOf = '2026-01-01') {
  const result = waterHistory({ ...EMPTY, ...input }, begin, asOf, ASSUMED, EN)
  if (!result.ok) throw new Error(result.reason)
  return { segments: result.value, ...result }
}
const brief = (input: Partial<WaterHistoryInput>) => steps(input).segments.map((s) => [s.fromDay, s.freeChlorineMgL, s.chloramineMgL])

describe('water history', () => {
  it('changes with the town from the day of the change on', () => {
    expect(brief({ supplyPeriods: [period('2000-01-01', 'free-chlorine', 0.8), period('2019-04-01', 'chloramine', 2.5)] })).toEqual([
      ['2010-01-01', 0.8, 0],
      ['2019-04-01', 0, 2.5],
    ])
  })

  it('does not carry chloramine back before its recorded start', () => {
    expect(brief({ supplyPeriods: [period('2019-04-01', 'chloramine', 2.5)] })[0]).toEqual(['2010-01-01', 0.8, 0])
  })

  it('lets a test outrank the supply from its day until the disinfectant changes', () => {
    const tests = [{ day: '2015-06-01', point: 'softener-inlet' as const, freeChlorineMgL: 1.4, totalChlorineMgL: 1.5 }]
    const supplyPeriods = [period('2000-01-01', 'free-chlorine', 0.8), period('2019-04-01', 'chloramine', 2.5)]
    const rows = brief({ supplyPeriods, tests })
    expect(rows.map((row) => row[0])).toEqual(['2010-01-01', '2015-06-01', '2019-04-01'])
    expect(rows[1]?.[1]).toBe(1.4)
    expect(rows[1]?.[2]).toBeCloseTo(0.1, 12)
    expect(rows[2]?.slice(1)).toEqual([0, 2.5])
  })

  it('takes the disinfectant away while carbon stands ahead, also from a raw-water test', () => {
    const supplyPeriods = [period('2000-01-01', 'free-chlorine', 0.8)]
    const preTreatments = [{ kind: 'carbon' as const, fromDay: '2012-01-01', toDay: '2018-01-01' }]
    const tests = [{ day: '2014-01-01', point: 'raw' as const, freeChlorineMgL: 2 }]
    expect(brief({ supplyPeriods, preTreatments, tests })).toEqual([
      ['2010-01-01', 0.8, 0],
      ['2012-01-01', 0, 0],
      ['2014-01-01', 0, 0],
      ['2018-01-01', 2, 0],
    ])
  })

  it('forgets an inlet test taken behind carbon once the carbon is gone', () => {
    const supplyPeriods = [period('2000-01-01', 'free-chlorine', 0.8)]
    const preTreatments = [{ kind: 'carbon' as const, fromDay: null, toDay: '2018-01-01' }]
    const tests = [{ day: '2014-01-01', point: 'softener-inlet' as const, freeChlorineMgL: 0 }]
    expect(brief({ supplyPeriods, preTreatments, tests }).at(-1)).toEqual(['2018-01-01', 0.8, 0])
  })

  it('ignores softened water and tests of the future, and says so of the latter', () => {
    const tests = [
      { day: '2014-01-01', point: 'softened' as const, freeChlorineMgL: 3 },
      { day: '2027-01-01', point: 'raw' as const, freeChlorineMgL: 3 },
    ]
    const result = steps({ supplyPeriods: [period('2000-01-01', 'free-chlorine', 0.8)], tests })
    expect(result.segments).toHaveLength(1)
    expect(result.assumptions.join(' ')).toContain('Jan 1, 2027')
  })

  it('reads total chlorine by what the town uses', () => {
    const tests = [{ day: '2009-01-01', point: 'raw' as const, totalChlorineMgL: 1.8 }]
    expect(brief({ supplyPeriods: [period('2000-01-01', 'chloramine', 2.5)], tests })).toEqual([['2010-01-01', 0, 1.8]])
    expect(brief({ supplyPeriods: [period('2000-01-01', 'free-chlorine', 2.5)], tests })).toEqual([['2010-01-01', 1.8, 0]])
  })

  it('names what is missing when nothing is known', () => {
    const result = steps({})
    expect(result.segments[0]?.freeChlorineMgL).toBe(0.7)
    expect(result.missing).toContain('Water at the softener never tested.')
    expect(result.assumptions.join(' ')).toContain('assumed')
  })

  it('removes iron behind an iron filter and keeps a well’s iron for the years before its test', () => {
    const tests = [{ day: '2020-01-01', point: 'raw' as const, ironMgL: 1.5 }]
    const preTreatments = [{ kind: 'iron-filter' as const, fromDay: '2021-01-01', toDay: null }]
    const iron = steps({ supplyPeriods: [period('2000-01-01', 'none', null, null)], tests, preTreatments }).segments
    expect(iron[0]?.ironMgL).toBe(1.5)
    expect(iron.at(-1)?.ironMgL).toBe(0)
  })

  it('refuses negative amounts and impossible dates with a sentence', () => {
    const negative = waterHistory(
      { ...EMPTY, supplyPeriods: [period('2000-01-01', 'free-chlorine', -1)] },
      '2010-01-01',
      '2026-01-01',
      ASSUMED,
      EN,
    )
    expect(negative).toMatchObject({ ok: false, reason: expect.stringContaining('-1 mg/L') })
    const date = waterHistory({ ...EMPTY, supplyPeriods: [period('2000-02-30', 'none', null)] }, '2010-01-01', '2026-01-01', ASSUMED, EN)
    expect(date).toMatchObject({ ok: false, reason: expect.stringContaining('2000-02-30') })
    const nan = waterHistory(
      { ...EMPTY, tests: [{ day: '2012-01-01', point: 'raw', ironMgL: Number.NaN }] },
      '2010-01-01',
      '2026-01-01',
      ASSUMED,
      EN,
    )
    expect(nan.ok).toBe(false)
  })
})
