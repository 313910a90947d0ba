const currencyFormat = (currency: string, decimals?: number) =>
  new Intl.NumberFormat('en-US', { style: 'currency', currency, ...(decimals === undefined ? {} : { maximumFractionDigits: decimals }) })

/** Decimals of a currency (ISO 4217): 2 for most, 0 where it has no minor units. */
export const minorDigits = (currency: string): number => currencyFormat(currency).resolvedOptions().maximumFractionDigits ?? 2

/** Minor units in one of the currency: 100 for most, 1 where there are none. */
export const minorPer = (currency: string): number => 10 ** minorDigits(currency)

/** Minor units as money, with the currency's own decimals: "$420.00". */
export const formatMoney = (minor: number, currency: string): string => currencyFormat(currency).format(minor / minorPer(currency))

/** Minor units as money without decimals, as estimates are told: "$64". */
export const formatWholeMoney = (minor: number, currency: string): string => currencyFormat(currency, 0).format(minor / minorPer(currency))
