import { foldLetters, phoneDigits } from '../import/normalise.ts'

/** Longer tokens tell nothing more; queries are cut alike. */
const LONGEST_TOKEN = 24
const SHORTEST_SUFFIX = 2
const SHORTEST_PHONE_SUFFIX = 3

/**
 * What to store for a record so that a prefix look-up finds any part of a word: each word folded (see `foldLetters`) and every ending of it of two or more
 * characters; a phone's digits and their endings of three or more; a tank size as one word, "10x54". Sorted, each once.
 *
 * @param texts names, streets, towns, labels, tank sizes
 * @param phones phone numbers as written
 */
export function tokensFor(texts: readonly string[], phones: readonly string[]): string[] {
  const tokens = new Set<string>()
  for (const text of texts) {
    for (const word of searchWords(text)) addEndings(tokens, word, SHORTEST_SUFFIX)
  }
  for (const phone of phones) addEndings(tokens, phoneDigits(phone), SHORTEST_PHONE_SUFFIX)
  return [...tokens].sort()
}

/**
 * The terms of a search; a record matches when each of them begins one of its tokens. Leading zeros of a long number are dropped, so that
 * 01632 also finds a number stored as +44 1632.
 */
export function queryTerms(query: string): string[] {
  const terms = searchWords(query.replace(/\+\d{1,3}(?=[\s(-]*\d)/g, ' ')).map((word) => {
    const term = /^0\d{3,}$/.test(word) ? word.replace(/^0+(?=\d)/, '') : word
    return firstCharacters(term)
  })
  return [...new Set(terms)]
}

/** The token of a valve's card: no word looks like it. The card's own name is matched when somebody searches, so renaming it touches no site. */
export const cardToken = (cardId: string): string => `#${cardId}`

/** Words that name any softener; a list of all sites would be no answer to them. */
const ANY_SOFTENER = new Set(['softener', 'house', 'plant', 'twin', 'water', 'system', 'unit'])

/** A softener's label without the words that any of them carries: its model, or where it stands. */
export function modelText(label: string): string {
  return searchWords(label)
    .filter((word) => !ANY_SOFTENER.has(word))
    .join(' ')
}

/** Words as both sides see them: apostrophes vanish, `10 x 54"` closes up to "10x54", everything else that is no letter or digit parts words. */
export function searchWords(text: string): string[] {
  return foldLetters(text)
    .replace(/['’‘`´]/g, '')
    .replace(/(?<![\p{L}\p{N}.])(\d{1,2}(?:\.\d)?)\s*["”″]?\s*[x×*]\s*(\d{2,3})(?!\d)/gu, '$1x$2')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
}

function addEndings(tokens: Set<string>, word: string, shortest: number): void {
  const characters = [...word]
  if (characters.length === 0) return
  tokens.add(firstCharacters(word))
  for (let start = 1; start <= characters.length - shortest; start++) {
    tokens.add(characters.slice(start, start + LONGEST_TOKEN).join(''))
  }
}

function firstCharacters(word: string): string {
  return [...word].slice(0, LONGEST_TOKEN).join('')
}
