import { quoteNumber } from '@almanac/units/format-number'
import { type Refusal, refuse } from '@almanac/units/result'
import type { SiteInput } from './site-input.ts'

type Bound = { least: number; most: number; what: string; unit: string; todo: string }
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
  coldestF: { least: 32, most: 110, what: 'The coldest water', unit: '°F', todo: 'measure it again at the softener' },
  warmestF: { least: 32, most: 110, what: 'The warmest water', unit: '°F', todo: 'measure it again at the softener' },
  usualF: { least: 32, most: 110, what: 'The water temperature', unit: '°F', todo: 'measure it again at the softener' },
  backwashGpm: { least: 0.1, most: 500, what: 'The installed backwash', unit: 'gpm', todo: 'read the flow control in the valve' },
  fixtureUnits: { least: 0.5, most: 5000, what: 'The sum of fixture units', unit: 'wsfu', todo: 'count what draws water again' },
  bedAgeYears: { least: 0, most: 80, what: 'The age of the bed', unit: 'years', todo: 'check when it went in' },
  dissolvedSolidsMgL: { least: 0, most: 20_000, what: 'Dissolved solids', unit: 'mg/L', todo: 'check the entry and its unit' },
  people: { least: 0.5, most: 10_000, what: 'The number of people', unit: 'people', todo: 'check the entry' },
  measuredGalDay: { least: 1, most: 2_000_000, what: 'The water used', unit: 'gal a day', todo: 'read the meter again' },
  refillGpm: { least: 0.02, most: 50, what: 'The refill flow', unit: 'gpm', todo: 'see the valve' },
  wantedLbFt3: { least: 1, most: 40, what: 'The salt dose', unit: 'lb/ft³', todo: 'choose one between 4 and 15' },
  mostLeakageMgL: { least: 0.5, most: 500, what: 'The hardness allowed to pass', unit: 'mg/L', todo: 'check the entry and its unit' },
}

/** The sentence about the first of these values that cannot be right, or null. A value that is not known is all right. */
export function checkSite(input: SiteInput, keys: readonly Checked[]): Refusal | null {
  for (const key of keys) {
    const value = input[key]
    if (value === null) continue
    const { least, most, what, unit, todo } = BOUNDS[key]
    if (!(value >= least && value <= most))
      return refuse(`${what} of ${quoteNumber(value)} ${unit} is outside ${least} to ${most} ${unit}; ${todo}.`)
  }
  if (input.coldestF !== null && input.warmestF !== null && input.coldestF > input.warmestF)
    return refuse(`The coldest water (${input.coldestF} °F) would be warmer than the warmest (${input.warmestF} °F); check which is which.`)
  return null
}

export const TEMPERATURE_KEYS = ['coldestF', 'warmestF', 'usualF'] as const
export const HYDRAULIC_KEYS = [...TEMPERATURE_KEYS, 'backwashGpm', 'fixtureUnits', 'people'] as const
export const SETTING_KEYS = [
  ...TEMPERATURE_KEYS,
  ...(['backwashGpm', 'bedAgeYears', 'dissolvedSolidsMgL', 'people', 'measuredGalDay', 'refillGpm'] as const),
  ...(['wantedLbFt3', 'mostLeakageMgL'] as const),
] as const
