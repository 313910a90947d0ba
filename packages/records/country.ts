import type { UnitSystem } from '@almanac/units/unit-system'
import type { Paper } from './paper.ts'

/** Locales to choose from, because the words are English, Spanish or of a neighbour. */
export const offeredLocales = [
  ...['en-US', 'en-GB', 'en-IE', 'en-CA', 'en-AU', 'en-NZ', 'es-US', 'es-MX', 'es-ES', 'fr-CA', 'fr-FR', 'de-DE', 'nl-NL'],
] as const
export type OfferedLocale = (typeof offeredLocales)[number]

/** What a company in a country usually writes with. Only a beginning: each can be changed. */
export type Country = {
  /** ISO 3166-1. */
  code: string
  name: string
  locale: OfferedLocale
  unitSystem: UnitSystem
  /** ISO 4217. */
  currency: string
  paper: Paper
}

/** Currency, measurement system and paper as the Unicode CLDR (supplemental data) has them; a test compares. */
const USUAL: readonly Omit<Country, 'locale'>[] = [
  { code: 'US', name: 'United States', unitSystem: 'us', currency: 'USD', paper: 'letter' },
  { code: 'CA', name: 'Canada', unitSystem: 'metric', currency: 'CAD', paper: 'letter' },
  { code: 'MX', name: 'Mexico', unitSystem: 'metric', currency: 'MXN', paper: 'letter' },
  { code: 'GB', name: 'United Kingdom', unitSystem: 'metric', currency: 'GBP', paper: 'a4' },
  { code: 'IE', name: 'Ireland', unitSystem: 'metric', currency: 'EUR', paper: 'a4' },
  { code: 'AU', name: 'Australia', unitSystem: 'metric', currency: 'AUD', paper: 'a4' },
  { code: 'NZ', name: 'New Zealand', unitSystem: 'metric', currency: 'NZD', paper: 'a4' },
  { code: 'FR', name: 'France', unitSystem: 'metric', currency: 'EUR', paper: 'a4' },
  { code: 'DE', name: 'Germany', unitSystem: 'metric', currency: 'EUR', paper: 'a4' },
  { code: 'NL', name: 'Netherlands', unitSystem: 'metric', currency: 'EUR', paper: 'a4' },
  { code: 'ES', name: 'Spain', unitSystem: 'metric', currency: 'EUR', paper: 'a4' },
]

const localeIn = (code: string): OfferedLocale => offeredLocales.find((one) => one.endsWith(`-${code}`)) ?? offeredLocales[0]

/** The countries to choose from, each with the first of its locales. */
export const countries: readonly Country[] = USUAL.map((one) => ({ ...one, locale: localeIn(one.code) }))
