import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import { enterLines } from '@almanac/softener/setting/card-enter'
import { type CardFacts, cardFacts, grainWords } from '@almanac/softener/setting/card-facts'
import { followLines } from '@almanac/softener/setting/card-follows'
import { settingsCard } from '@almanac/softener/setting/settings-card'
import { describe, expect, it } from 'vitest'
import { evaluatedHouse, HOUSE, US_WORDS as US } from '../support/house-site.ts'

const found = evaluatedHouse(USUAL_FIGURES)
const { setting, hardness } = found
if ('reason' in setting || 'reason' in hardness) throw new Error('no setting')
const facts = cardFacts(found, setting, hardness, HOUSE, USUAL_FIGURES, US)
const line = (lines: ReturnType<typeof followLines>, id: string) => lines.find((one) => one.id === id)
const withDose = (change: Partial<CardFacts['dose']>) => followLines({ ...facts, dose: { ...facts.dose, ...change } })
const withSetting = (change: Partial<CardFacts['setting']>) => enterLines({ ...facts, setting: { ...facts.setting, ...change } })

describe('the settings card, in words', () => {
  it('grains are told to ten', () => expect(grainWords(24_996, { locale: 'en-US', unitSystem: 'us' })).toBe('25,000 gr'))
  it('a reserve that is a share is a per cent', () => {
    expect(line(withSetting({ reserve: { kind: 'share', share: 0.25 }, reserveGr: 9000 }), 'reserve')?.hint).toBe('25% of the capacity')
  })
  it('fourteen days are the usual limit, fewer are for metals', () => {
    const hint = (mostDays: number) => line(withSetting({ mostDays }), 'override')?.hint
    expect([14, 13].map(hint)).toEqual([undefined, 'iron or manganese must not settle'])
  })
  it('days to a tenth below ten; that it could go longer is told from half a day more on', () => {
    const interval = (days: number, intervalDays: number) => line(withDose({ days, intervalDays }), 'interval')
    expect([9.94, 10.4].map((days) => interval(days, days)?.value)).toEqual(['9.9 days', '10 days'])
    expect(interval(7.5, 7)?.hint).toBeUndefined()
    expect(interval(7.52, 7)?.hint).toBe('it could go 7.5 days; held to 7 days')
  })
  it('salt efficiency beside the most there can be: a pound of salt holds 453.592 g ÷ 58.44 g/mol of charge, 5,994 gr as CaCO₃ at 50.04 g/mol', () => {
    // 453.59237 / 58.443 × 50.0435 g, at 64.79891 mg a grain.
    const most = ((453.59237 / 58.443) * 50.0435 * 1000) / 64.79891
    expect(Math.abs(most - 5994)).toBeLessThan(1)
    expect(line(withDose({ grPerLb: most / 2 }), 'efficiency')?.why.formula).toMatch(/so this is 50%\.$/)
  })
  it('a bed that has lost a quarter by its age is warned of (UFC 3-240-13FN §2-2.5.1.4)', () => {
    const warned = (ageShare: number) => {
      const made = settingsCard({ ...found, setting: { ...setting, ageShare } }, HOUSE, USUAL_FIGURES, US)
      if ('reason' in made) throw new Error(made.reason)
      return made.warnings.some((one) => one.includes('lost a quarter of its capacity'))
    }
    expect([0.75, 0.76].map(warned)).toEqual([true, false])
  })
})
