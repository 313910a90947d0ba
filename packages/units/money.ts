import type { Display } from './display.ts'
import { numberFormat, plainSpaces } from './format-number.ts'

/** What writing money takes of the company's display: its locale, and the currency that amounts are kept in. */
export type MoneyDisplay = Pick<Display, 'locale' | 'currency'>

/** Decimals of a currency (ISO 4217): 2 for most, 0 where it has no minor units. */
export const minorDigits = (currency: string): number =>
  numberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2

/** Minor units in one of the currency: 100 for most, 1 where there are none. */
export const minorPer = (currency: string): number => 10 ** minorDigits(currency)

/** Minor units as money, with the currency's own decimals: "$420.00". */
export const formatMoney = (minor: number, { locale, currency }: MoneyDisplay): string =>
  plainSpaces(numberFormat(locale, { style: 'currency', currency }).format(minor / minorPer(currency)))

/** Minor units as money without decimals, as estimates are told: "$64". */
export const formatWholeMoney = (minor: number, { locale, currency }: MoneyDisplay): string =>
  plainSpaces(numberFormat(locale, { style: 'currency', currency, maximumFractionDigits: 0 }).format(minor / minorPer(currency)))

/** Every currency that the platform can write (ISO 4217). */
export const currencyCodes = (): readonly string[] => Intl.supportedValuesOf('currency')

/** A currency's name in English: "US Dollar". */
export const currencyName = (code: string): string => new Intl.DisplayNames('en', { type: 'currency' }).of(code) ?? code
