import { en } from '@almanac/words/en/all'
import { es } from '@almanac/words/es/all'
import { piecesOf } from './message-parts.ts'

const even = (text: string) => text.toLowerCase().replace(/[\s\u00a0]+/g, ' ')
const bare = (piece: string) => even(piece).replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$/gu, '')
const messages = (catalogue: object) => Object.values(catalogue).flatMap((room) => Object.values(room as Record<string, string>))

/** Words of units, tools and standards that both languages share. */
const spanish = new Set(messages(es).flatMap(piecesOf).map(bare))
const spanishText = messages(es).flatMap(piecesOf).map(even).join(' | ')

/** English pieces of two words or more that Spanish says otherwise. A single word may be a name in somebody's record. */
const english = [...new Set(messages(en).flatMap(piecesOf).map(bare))].filter(
  (piece) => /\p{L}{2,} \p{L}{2,}/u.test(piece) && !spanish.has(piece) && !spanishText.includes(piece),
)

/** Words that hardly an English sentence does without and no Spanish one has: they find what stands in no catalogue. */
const TELLING =
  /(?<![\p{L}\p{N}@.])(?:the|and|of|with|is|are|not|from|was|this|that|for|you|your|when|what|by|known|unknown|about|then)(?![\p{L}\p{N}@])/giu

/** What of the English catalogue, or else in English, stands in a text that should be Spanish. `own` is what people wrote themselves: names, notes, the stores' items. */
export function englishLeft(text: string, own: readonly string[] = []): string[] {
  let read = even(text)
  for (const one of [...own].sort((a, b) => b.length - a.length)) if (one.trim()) read = read.replaceAll(even(one), ' · ')
  const edge = (piece: string) => new RegExp(`(?<![\\p{L}\\p{N}])${piece.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![\\p{L}\\p{N}])`, 'u')
  const around = [...read.matchAll(TELLING)].map(({ index }) => `…${read.slice(Math.max(0, index - 20), index + 20)}…`)
  return [...english.filter((piece) => read.includes(piece) && edge(piece).test(read)), ...around]
}
