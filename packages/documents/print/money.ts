/** An amount in minor units as "$1,240.00"; the currency's own number of decimals. */
export function money(minor: number, currency: string): string {
  const format = new Intl.NumberFormat('en-US', { style: 'currency', currency })
  return format.format(minor / 10 ** (format.resolvedOptions().maximumFractionDigits ?? 2))
}
