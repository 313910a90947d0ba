import { placeKeys } from './match-keys.ts'
import { normaliseName, normalisePhone, normaliseText } from './normalise.ts'

/** What tells a customer from others, of a list or on record. */
export type ListedPerson = {
  name: string
  reference: string | null
  phones: readonly string[]
  emails: readonly string[]
  places: readonly { street: string | null; postcode: string | null; town: string | null }[]
}

/** Whether two are one, or may be, and what agrees; null where nothing does. */
export type Likeness = { surely: boolean; by: string[] } | null

/** A person with the keys under which whoever may be the same is found, worked out once. */
export type Keyed<P extends ListedPerson> = { person: P; keys: ReadonlySet<string> }

export function keyed<P extends ListedPerson>(person: P): Keyed<P> {
  const { phones, emails, places } = person
  return {
    person,
    keys: new Set([
      ...phones.map((phone) => `phone:${normalisePhone(phone)}`),
      ...emails.map((email) => `email:${email.toLowerCase()}`),
      ...places.flatMap((place) => placeKeys(place)).map((place) => `at:${place}`),
    ]),
  }
}

/** A phone or address that more customers share tells nobody from anybody: an office's own number, "000". Common practice, no source. */
export const MOST_SHARING = 20

/** Finds who shares a key with somebody, without comparing each with each: a list may give one number to all of its rows. Filled one by one, so that others get their turn. */
export function sharersOf<P extends ListedPerson>() {
  const byKey = new Map<string, Keyed<P>[]>()
  return {
    add(person: P): void {
      const one = keyed(person)
      for (const key of one.keys) {
        const there = byKey.get(key)
        if (there) there.push(one)
        else byKey.set(key, [one])
      }
    },
    find({ keys }: Keyed<ListedPerson>): Keyed<P>[] {
      const found = [...keys].map((key) => byKey.get(key) ?? []).filter((there) => there.length <= MOST_SHARING)
      return [...new Set(found.flat())]
    },
  }
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
export function likeness({ person: one, keys: own }: Keyed<ListedPerson>, { person: other, keys }: Keyed<ListedPerson>): Likeness {
  const shared = [...own].filter((key) => keys.has(key))
  if (shared.length === 0) return null
  const by = WORDS.filter(([prefix]) => shared.some((key) => key.startsWith(prefix))).map(([, word]) => word)
  if (one.reference && other.reference && normaliseText(one.reference) !== normaliseText(other.reference)) return null
  const sameName = normaliseName(one.name) === normaliseName(other.name)
  return { surely: sameName, by: [...(sameName ? ['name'] : []), ...by] }
}
