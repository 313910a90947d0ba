import type { Price } from '@almanac/contract/agreements'
import { pricePerWords, type TurnUnit } from '@almanac/records/agreement'

/** How often turns come, as an agreement is usually made. Common practice, no source. */
export const USUAL_EVERY: readonly { count: number; unit: TurnUnit }[] = [
  { count: 1, unit: 'year' },
  { count: 2, unit: 'year' },
  { count: 6, unit: 'month' },
  { count: 4, unit: 'month' },
  { count: 3, unit: 'month' },
  { count: 2, unit: 'month' },
  { count: 1, unit: 'month' },
  { count: 8, unit: 'week' },
  { count: 6, unit: 'week' },
  { count: 4, unit: 'week' },
  { count: 2, unit: 'week' },
]

/** "every year", "every 6 weeks". */
export const everyWords = ({ count, unit }: { count: number; unit: TurnUnit }): string =>
  count === 1 ? `every ${unit}` : `every ${count} ${unit}s`

/** "$185.00 a year"; "no price set" where nothing is agreed. */
export const priceWords = (price: Price | null, money: (minor: number) => string): string =>
  price === null || price.minor === null ? 'no price set' : `${money(price.minor)} ${pricePerWords[price.per]}`
