const currencyFormat = (currency: string, decimals?: number) =>
  new Intl.NumberFormat('en-US', { style: 'currency', currency, ...(decimals === undefined ? {} : { maximumFractionDigits: decimals }) })

/** Minor units in one of the currency (ISO 4217): 100 for most, 1 where there are none. */
export function minorPer(currency: string): number {
  return 10 ** (currencyFormat(currency).resolvedOptions().maximumFractionDigits ?? 2)
}

/** Minor units as money, with the currency's own decimals: "$420.00". */
export const formatMoney = (minor: number, currency: string): string => currencyFormat(currency).format(minor / minorPer(currency))

/** Minor units as money without decimals, as estimates are told: "$64". */
export const formatWholeMoney = (minor: number, currency: string): string => currencyFormat(currency, 0).format(minor / minorPer(currency))
