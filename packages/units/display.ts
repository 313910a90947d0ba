import type { UnitSystem } from './unit-system.ts'

/**
 * How a company reads what is shown to it. `locale` is a BCP 47 tag ('en-US') and decides decimal marks, percent, money, days and clock;
 * `currency` is an ISO 4217 code, `timeZone` an IANA name. Every writer takes this, or the part of it that it needs.
 */
export type Display = { readonly locale: string; readonly unitSystem: UnitSystem; readonly currency: string; readonly timeZone: string }

/** What a number with its unit needs: a locale and a system of units. */
export type AmountDisplay = Pick<Display, 'locale' | 'unitSystem'>

/** True for a well-formed tag, spelled as BCP 47 spells it, of a language and region whose writing the platform knows. */
export function isLocale(text: string): boolean {
  try {
    return Intl.getCanonicalLocales(text)[0] === text && Intl.NumberFormat.supportedLocalesOf([text]).length === 1
  } catch {
    return false
  }
}

/** A locale's name in English: "American English"; its tag where it has none. */
export const localeName = (locale: string): string => new Intl.DisplayNames('en', { type: 'language' }).of(locale) ?? locale
