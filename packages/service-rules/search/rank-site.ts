import { phoneDigits } from '../import/normalise.ts'
import type { QueryReading } from './query-readings.ts'
import { searchWords } from './search-tokens.ts'

/** What a site is found by, as written. */
export type SiteTexts = {
  /** Its label and street. */
  place: readonly string[]
  /** Its town and postcode, which it shares with others. */
  area: readonly string[]
  /** Who holds it and who is reached there, with their numbers. */
  people: readonly { name: string; phone: string | null }[]
  /** The holder's customer number. */
  reference: string | null
}

/** `by` is what the search was for; `person` the place in `people` of whom it met, or null. A lower score is a better answer. */
export type SiteRank = { by: 'person' | 'address' | 'tank'; person: number | null; score: number }

/** How well one word meets a term: the same, begun by it, it stands within, not at all. */
const SAME = 0
const BEGUN = 1
const WITHIN = 2
const MISSED = 5
/** A spelling that was not typed is a worse answer; so is what many sites share. */
const OTHER_SPELLING = 0.5
const SHARED = 0.4

/** Judges how well a site answers a search, and by which of its facts. A site that none of its texts explains was found by its tank. */
export function rankSite(texts: SiteTexts, { terms }: Pick<QueryReading, 'terms'>): SiteRank {
  let score = 0
  let [byPerson, byPlace] = [false, false]
  let person: number | null = null
  for (const spellings of terms) {
    const place = Math.min(bestOf(texts.place, spellings), bestOf(texts.area, spellings) + SHARED)
    const people = texts.people.map((one) => Math.min(bestOf([one.name], spellings), phoneGrade(one.phone, spellings)))
    const reference = texts.reference ? bestOf([texts.reference], spellings) : MISSED
    const someone = Math.min(MISSED, reference, ...people)
    score += Math.min(place, someone)
    if (someone < MISSED && someone <= place) {
      byPerson = true
      if (someone < reference) person ??= people.indexOf(someone)
    } else if (place < MISSED) byPlace = true
  }
  return { by: byPerson ? 'person' : byPlace ? 'address' : 'tank', person, score }
}

function bestOf(texts: readonly string[], spellings: readonly string[]): number {
  let best = MISSED
  for (const word of texts.flatMap(searchWords))
    for (const [index, spelling] of spellings.entries()) best = Math.min(best, wordGrade(word, spelling) + (index > 0 ? OTHER_SPELLING : 0))
  return Math.min(best, MISSED)
}

function wordGrade(word: string, term: string): number {
  if (word === term) return SAME
  if (word.startsWith(term)) return BEGUN
  return word.includes(term) ? WITHIN : MISSED
}

function phoneGrade(phone: string | null, spellings: readonly string[]): number {
  if (!phone) return MISSED
  const digits = phoneDigits(phone)
  const grades = spellings.map((term, index) =>
    !/^\d{3,}$/.test(term) || !digits.includes(term)
      ? MISSED
      : (digits.endsWith(term) ? (term.length >= 7 ? SAME : BEGUN) : WITHIN) + (index > 0 ? OTHER_SPELLING : 0),
  )
  return Math.min(MISSED, ...grades)
}
