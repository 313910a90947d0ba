import { placeKeys } from './match-keys.ts'
import { normaliseName, normalisePhone, normaliseText } from './normalise.ts'

/** What tells a customer from others, of a list or on record. */
export type Person = {
  name: string
  reference: string | null
  phones: readonly string[]
  emails: readonly string[]
  places: readonly { street: string | null; postcode: string | null; town: string | null }[]
}

/** Whether two are one, or may be, and what agrees; null where nothing does. */
export type Likeness = { surely: boolean; by: string[] } | null

/** Keys under which whoever may be the same is found without comparing each with each. */
export function likenessKeys({ phones, emails, places }: Person): string[] {
  return [
    ...phones.map((phone) => `phone:${normalisePhone(phone)}`),
    ...emails.map((email) => `email:${email.toLowerCase()}`),
    ...places.flatMap((place) => placeKeys(place)).map((place) => `at:${place}`),
  ]
}

const WORDS: readonly [prefix: string, word: string][] = [
  ['phone:', 'phone'],
  ['email:', 'email'],
  ['at:', 'address'],
]

/**
 * Two with one name are the same where phone, email or address agree, unless both have a customer number and these differ. With different names they may be: a
 * household, a sold house, a number handed on. A person decides that.
 */
export function likeness(one: Person, other: Person): Likeness {
  const keys = new Set(likenessKeys(other))
  const shared = likenessKeys(one).filter((key) => keys.has(key))
  if (shared.length === 0) return null
  const by = WORDS.filter(([prefix]) => shared.some((key) => key.startsWith(prefix))).map(([, word]) => word)
  if (one.reference && other.reference && normaliseText(one.reference) !== normaliseText(other.reference)) return null
  const sameName = normaliseName(one.name) === normaliseName(other.name)
  return { surely: sameName, by: [...(sameName ? ['name'] : []), ...by] }
}
