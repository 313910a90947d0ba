import { cleanCell } from './clean-cell.ts'
import type { ImportField } from './fields.ts'
import { headerPhrases, idleWords } from './header-words.ts'
import { normaliseText } from './normalise.ts'

/** A word that is spelt right is never taken for the misspelling of another. */
const knownWords = new Set(headerPhrases.flatMap((phrase) => phrase.words))

/** A longer text names no column: it is a record or a stray paragraph. */
const LONGEST_HEADER = 200

/** The words of a header; run-together ones are parted ("LastService", "tank_size", "Addr1"). */
export function headerWords(header: string): string[] {
  const parted = cleanCell(header)
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replace(/([A-Za-z]{3,})(\d)/g, '$1 $2')
    .replace(/#/g, ' no ')
    .replace(/µ|μ/g, 'u')
  return normaliseText(parted)
    .split(' ')
    .filter((word) => word !== '')
}

/**
 * How well each field explains a header, 0 to 1; fields that do not are left out. Words are matched in any order, with one slip of the pen in words of
 * five letters or more and two in words of eight or more.
 */
export function scoreHeader(header: string): Map<ImportField, number> {
  const scores = new Map<ImportField, number>()
  if (header.length > LONGEST_HEADER) return scores
  const words = headerWords(header)
  if (words.length === 0) return scores
  for (const phrase of headerPhrases) {
    const score = scorePhrase(words, phrase.words)
    if (score > (scores.get(phrase.field) ?? 0)) scores.set(phrase.field, score)
  }
  return scores
}

function scorePhrase(words: readonly string[], phrase: readonly string[]): number {
  const left = [...words]
  let likeness = 0
  for (const wanted of phrase) {
    let best = -1
    let bestLikeness = 0
    for (const [index, word] of left.entries()) {
      const one = wordLikeness(word, wanted)
      if (one > bestLikeness) [best, bestLikeness] = [index, one]
    }
    if (best < 0) return 0
    left.splice(best, 1)
    likeness += bestLikeness
  }
  const unexplained = left.filter((word) => !idleWords.has(word) && !/^\d+$/.test(word)).length
  return (likeness / phrase.length) * (phrase.length / (phrase.length + unexplained)) * (1 - 0.02 * (left.length - unexplained))
}

function wordLikeness(word: string, wanted: string): number {
  if (word === wanted) return 1
  if (word === `${wanted}s` || wanted === `${word}s`) return 0.97
  if (idleWords.has(word) || knownWords.has(word)) return 0
  const shorter = Math.min(word.length, wanted.length)
  const allowed = shorter >= 8 ? 2 : shorter >= 5 ? 1 : 0
  // Short words have too many neighbours ("date", "gate"): only letters changed about count there.
  if (allowed === 0) return shorter >= 3 && [...word].sort().join('') === [...wanted].sort().join('') ? 0.85 : 0
  if (Math.abs(word.length - wanted.length) > allowed) return 0
  const distance = editDistance(word, wanted)
  return distance <= allowed ? 0.9 - 0.05 * distance : 0
}

/** Insertions, deletions, replacements and swaps of neighbours that turn one word into the other (optimal string alignment). */
function editDistance(a: string, b: string): number {
  let twoAgo: number[] = []
  let before = Array.from({ length: b.length + 1 }, (_, index) => index)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const cost = a[i - 1] === b[j - 1] ? 0 : 1
      let least = Math.min((before[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (before[j - 1] ?? 0) + cost)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, (twoAgo[j - 2] ?? 0) + 1)
      row.push(least)
    }
    twoAgo = before
    before = row
  }
  return before[b.length] ?? 0
}
