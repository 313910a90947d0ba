import { USUAL_FIGURES } from '@almanac/softener/firm/usual-figures'
import type { CardWords, SettingsCard } from '@almanac/softener/setting/card-types'
import { settingsCard } from '@almanac/softener/setting/settings-card'
import type { SiteInput } from '@almanac/softener/site/site-input'
import { describe, expect, it } from 'vitest'
import { evaluatedHouse, HOUSE, US_WORDS as US } from '../support/house-site.ts'

const figures = { ...USUAL_FIGURES, saltPriceMinorPerLb: 20, waterPriceMinorPerGal: 1 }
const evaluated = (change: Partial<SiteInput> = {}) => evaluatedHouse(figures, change)
function card(change: Partial<SiteInput> = {}, words: CardWords = US): SettingsCard {
  const made = settingsCard(evaluated(change), { ...HOUSE, ...change }, figures, words)
  if ('reason' in made) throw new Error(made.reason)
  return made
}
const lines = ({ enter, steps, follows }: SettingsCard) => [...enter, ...steps, ...follows]
const line = (made: SettingsCard, id: string) => lines(made).find((one) => one.id === id)

describe('the settings card', () => {
  it('for a meter: hardness rounded up, gallons rounded down, salt, refill in minutes', () => {
    // Worked by hand for 8 lb/ft³: 34,860 gr ÷ 18 gpg = 1,936 gal; 12 lb ÷ 3 lb/gal ÷ 0.5 gpm = 8 min.
    const made = card({ wantedLbFt3: 8, hardnessGpg: 17.6, ironMgL: 0.1 })
    expect(line(made, 'hardness')?.value).toBe('18 gpg')
    expect(line(made, 'gallons')?.value).toBe('1,930 gal')
    expect(line(made, 'override')?.value).toBe('14 days')
    expect(line(made, 'salt')?.value).toBe('12 lb')
    expect(line(made, 'refill')?.value).toBe('8 minutes')
    expect(line(made, 'reserve')).toMatchObject({ value: '240 gal', hint: 'one day’s use' })
    expect(line(made, 'days')).toBeUndefined()
  })
  it('for a timer: whole days in place of gallons, and no limit met that asks for demand', () => {
    const made = card({ control: 'timer', wantedLbFt3: 8 })
    expect(line(made, 'days')?.value).toBe('8 days')
    expect(line(made, 'gallons')).toBeUndefined()
    expect(line(made, 'efficiency')?.hint).toMatch(/on demand/)
  })
  it('metric: mg/L in tens, litres in fifties, kg', () => {
    const made = card({ wantedLbFt3: 8 }, { ...US, display: { locale: 'en-US', unitSystem: 'metric' } })
    expect(line(made, 'hardness')?.value).toBe('310 mg/L')
    expect(line(made, 'gallons')?.value).toBe('7,300 L')
    expect(line(made, 'salt')?.value).toBe('5.4 kg')
  })
  it('cautions of sodium from 20 mg/L up (EPA), of potassium with KCl, and is silent below', () => {
    expect(card().cautions).toEqual([expect.stringMatching(/142 mg\/L of sodium.*no more than 20 mg\/L/)])
    expect(card({ hardnessGpg: 2.5 }).cautions).toEqual([])
    expect(card({ hardnessGpg: 2.6 }).cautions).toHaveLength(1)
    expect(card({ salt: 'KCl' }).cautions).toEqual([expect.stringMatching(/241 mg\/L of potassium/)])
  })
  it('names the published limits it meets', () => {
    expect(line(card({ wantedLbFt3: 5 }), 'efficiency')?.hint).toMatch(/meets 4,000/)
    expect(line(card({ wantedLbFt3: 7 }), 'efficiency')?.hint).toMatch(/meets 3,350 .* not 4,000/)
    expect(line(card({ wantedLbFt3: 10 }), 'efficiency')?.hint).toMatch(/below 3,350/)
  })
  it('warns of a softener too small, an old bed, iron, an unknown valve', () => {
    expect(card({ people: 60 }).warnings.join()).toMatch(/doesn’t last a day/)
    expect(card({ bedAgeYears: 9 }).warnings.join()).toMatch(/lost a quarter/)
    expect(card({ ironMgL: 3 }).warnings.join()).toMatch(/fouls/)
    expect(card({ control: null }).warnings.join()).toMatch(/runs by meter or timer/)
    expect(card().warnings).toEqual([])
  })
  it('each line says how and from where', () => {
    for (const change of [{}, { control: 'timer' }, { salt: 'KCl' }, { arrangement: 'twin-alternating' }, { resinKind: null }] as const)
      for (const one of lines(card(change))) {
        expect(one.why.formula, one.id).not.toBe('')
        expect(one.why.source, one.id).not.toBe('')
      }
  })
})

describe('a part that cannot be worked out says so, and the others stand', () => {
  it('no hardness: no setting, but backwash and flow', () => {
    const found = evaluated({ hardnessGpg: null })
    expect(found.setting).toMatchObject({ ok: false, reason: expect.stringMatching(/test it/) })
    for (const part of [found.backwash, found.flow]) expect(part).not.toHaveProperty('reason')
  })
  it('no tank size: a setting by resin and hardness all the same', () => {
    const found = evaluated({ diameterIn: null, heightIn: null })
    expect(found.setting).not.toHaveProperty('reason')
    expect(found.backwash).toMatchObject({ reason: expect.stringMatching(/measure/) })
  })
  it('a temperature that cannot be is refused with its number', () => {
    expect(evaluated({ coldestF: 5 }).backwash).toMatchObject({ reason: expect.stringMatching(/5 °F is outside 32 to 110/) })
    expect(evaluated({ coldestF: 70, warmestF: 50 }).setting).toMatchObject({ reason: expect.stringMatching(/which is which/) })
  })
})
