import { type JobKind, jobKinds, jobKindWords } from '@almanac/records/job-kind'
import { otherStreetWords, phoneDigits } from '../import/normalise.ts'
import { queryTerms, searchWords } from './search-tokens.ts'

/** A way to understand a search: every term must be met, by one of its spellings; `kinds` keeps the jobs of these kinds, and is empty for any. */
export type QueryReading = { terms: readonly (readonly string[])[]; kinds: readonly JobKind[] }

/** More words than these narrow nothing further. */
const MOST_TERMS = 8
const SHORTEST_PHONE = 5
/** A telephone number's last digits say the same with and without a country's code. */
const LAST_DIGITS = 9

/** The ways to understand what was typed, the plainest first: the first one that finds something counts. None for a blank search. */
export function queryReadings(query: string): QueryReading[] {
  const terms = queryTerms(query).slice(0, MOST_TERMS)
  if (terms.length === 0) return []
  const spelt = terms.map(spellings)
  const kinds = jobKinds.filter((kind) => terms.some((term) => beginsKind(term, kind)))
  const rest = spelt.filter(([term = '']) => !kinds.some((kind) => beginsKind(term, kind)))
  return [
    ...phoneReadings(query),
    { terms: spelt, kinds: [] },
    ...(kinds.length > 0 ? [{ terms: rest, kinds: kinds.filter((kind) => isWhole(terms, kind, kinds)) }] : []),
  ]
}

/** A number grouped in any way, "555 01 27 74 6", as one; then by its last digits. */
function phoneReadings(query: string): QueryReading[] {
  if (!/^[\d\s()+./-]+$/.test(query)) return []
  const digits = phoneDigits(query)
  if (digits.length < SHORTEST_PHONE) return []
  const asTyped = { terms: [[digits]], kinds: [] }
  return digits.length > LAST_DIGITS ? [asTyped, { terms: [[digits.slice(-LAST_DIGITS)]], kinds: [] }] : [asTyped]
}

const spellings = (term: string): string[] => [term, ...otherStreetWords(term)]

const SHORTEST_KIND = 4
const beginsKind = (term: string, kind: JobKind) =>
  term.length >= SHORTEST_KIND && searchWords(jobKindWords[kind]).some((word) => word.startsWith(term))

/** "Annual visit" is meant when both words were typed, and also when one of them points to no other kind. */
function isWhole(terms: readonly string[], kind: JobKind, kinds: readonly JobKind[]): boolean {
  const met = (of: JobKind) => terms.filter((term) => beginsKind(term, of)).length
  return met(kind) === Math.max(...kinds.map(met))
}
