import type { ImportedRecord } from './import-types.ts'
import { normaliseName, normalisePhone, normalisePostcode, normaliseStreet, normaliseText } from './normalise.ts'

/** Keys of a row; rows with equal keys speak of the same thing. Each is unique in a company and contains the one before it. */
export interface MatchKeys {
  customerKey: string
  siteKey: string
  softenerKey: string
}

/** The definition below in words for the screen. */
export const matchDefinition: readonly { thing: string; sentence: string }[] = [
  {
    thing: 'Same customer',
    sentence:
      'Two rows are the same customer when they have the same customer number. Without a number, name and phone must match; without a phone, name and email; without either, name and address.',
  },
  {
    thing: 'Same site',
    sentence: 'Two rows are the same site when customer, street and postcode match; without a postcode, customer, street and town.',
  },
  {
    thing: 'Same softener',
    sentence:
      'Two rows are the same softener when the site and the tank position match; without a position, the site and the label; without either, the site has one.',
  },
]

/**
 * What makes a row the same customer, site or softener: `matchDefinition` says it in words. Case, accents, punctuation, titles, "St"
 * for "Street", a house number before or behind and the country code of a phone make no difference. The keys come from the file's own values only,
 * so the same row gives the same keys whatever was edited since.
 */
export function matchKeys(record: ImportedRecord): MatchKeys {
  const place = placeKey(record.site)
  const customerKey = customerKeyOf(record, place)
  const siteKey = `${customerKey}|site:${place}`
  const { tankPosition, label } = record.softener
  const which = tankPosition ? `position:${normaliseText(tankPosition)}` : label ? `label:${normaliseText(label)}` : 'only'
  return { customerKey, siteKey, softenerKey: `${siteKey}|softener:${which}` }
}

function customerKeyOf(record: ImportedRecord, place: string): string {
  if (record.referenceNumber) return `ref:${normaliseText(record.referenceNumber)}`
  const name = `name:${normaliseName(record.customerName)}`
  if (record.contact.phone) return `${name}|phone:${normalisePhone(record.contact.phone)}`
  if (record.contact.email) return `${name}|email:${record.contact.email.toLowerCase()}`
  return `${name}|at:${place}`
}

type Place = { street: string | null; postcode: string | null; town: string | null }

/** A street with its postcode, or with its town where it has none. */
function placeKey({ street, postcode, town }: Place): string {
  return `${normaliseStreet(street ?? '')}/${postcode ? normalisePostcode(postcode) : normaliseText(town ?? '')}`
}

/** All ways to name a place: with its postcode and with its town, so that a list that has only one of them finds it. A place without a street is none. */
export function placeKeys({ street, postcode, town }: Place): string[] {
  if (!street || normaliseStreet(street) === '') return []
  const ways = [postcode ? placeKey({ street, postcode, town: null }) : null, town ? placeKey({ street, postcode: null, town }) : null]
  return ways.filter((way) => way !== null)
}
