import { quoteNumber } from '@almanac/units/format-number'
import { type Refusal, refuse } from '@almanac/units/result'
import type { CardSpeaking } from '../setting/card-types.ts'
import type { SiteInput } from './site-input.ts'

type Bound = { least: number; most: number }
type Checked =
  | 'coldestF'
  | 'warmestF'
  | 'usualF'
  | 'backwashGpm'
  | 'fixtureUnits'
  | 'bedAgeYears'
  | 'dissolvedSolidsMgL'
  | 'people'
  | 'measuredGalDay'
  | 'refillGpm'
  | 'wantedLbFt3'
  | 'mostLeakageMgL'

/** What a value may be; outside it is more likely a slip of entry or of the unit. */
const BOUNDS: Readonly<Record<Checked, Bound>> = {
  coldestF: { least: 32, most: 110 },
  warmestF: { least: 32, most: 110 },
  usualF: { least: 32, most: 110 },
  backwashGpm: { least: 0.1, most: 500 },
  fixtureUnits: { least: 0.5, most: 5000 },
  bedAgeYears: { least: 0, most: 80 },
  dissolvedSolidsMgL: { least: 0, most: 20_000 },
  people: { least: 0.5, most: 10_000 },
  measuredGalDay: { least: 1, most: 2_000_000 },
  refillGpm: { least: 0.02, most: 50 },
  wantedLbFt3: { least: 1, most: 40 },
  mostLeakageMgL: { least: 0.5, most: 500 },
}

/** The sentence about the first of these values that cannot be right, or null. A value that is not known is all right. */
export function checkSite(input: SiteInput, keys: readonly Checked[], { card }: Pick<CardSpeaking, 'card'>): Refusal | null {
  for (const key of keys) {
    const value = input[key]
    if (value === null) continue
    const { least, most } = BOUNDS[key]
    if (!(value >= least && value <= most))
      return refuse(card(`bad/${key}`, { value: quoteNumber(value), least: String(least), most: String(most) }))
  }
  if (input.coldestF !== null && input.warmestF !== null && input.coldestF > input.warmestF)
    return refuse(card('colderWarmer', { coldest: String(input.coldestF), warmest: String(input.warmestF) }))
  return null
}

export const TEMPERATURE_KEYS = ['coldestF', 'warmestF', 'usualF'] as const
export const HYDRAULIC_KEYS = [...TEMPERATURE_KEYS, 'backwashGpm', 'fixtureUnits', 'people'] as const
export const SETTING_KEYS = [
  ...TEMPERATURE_KEYS,
  ...(['backwashGpm', 'bedAgeYears', 'dissolvedSolidsMgL', 'people', 'measuredGalDay', 'refillGpm'] as const),
  ...(['wantedLbFt3', 'mostLeakageMgL'] as const),
] as const
