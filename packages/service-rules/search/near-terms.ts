const LETTERS = 'abcdefghijklmnopqrstuvwxyz'
const DIGITS = '0123456789'
/** Shorter words have so many neighbours that nearly every site has one. */
const SHORTEST_WORD = 4
/** A number short of a telephone's last digits is a house number or a size: another one is another house. */
const SHORTEST_NUMBER = 7

/**
 * The terms one slip away from a term: a letter left out, put in, mistaken, or two beside each other swapped. Sorted by how common the slip is, each once, the
 * term itself not among them. None for short words, for house numbers and for tank sizes, where the neighbour is something else.
 *
 * @param term folded, as `queryTerms` makes it
 */
export function nearTerms(term: string): string[] {
  const signs = /^[a-z]+$/.test(term) && term.length >= SHORTEST_WORD ? LETTERS : null
  const alphabet = signs ?? (/^\d+$/.test(term) && term.length >= SHORTEST_NUMBER ? DIGITS : null)
  if (alphabet === null) return []
  const near = new Set<string>()
  const places = Array.from({ length: term.length + 1 }, (_, place) => [term.slice(0, place), term.slice(place)] as const)
  for (const [before, after] of places) if (after.length > 1) near.add(before + after.charAt(1) + after.charAt(0) + after.slice(2))
  for (const [before, after] of places) if (after !== '') near.add(before + after.slice(1))
  for (const [before, after] of places) for (const sign of alphabet) near.add(before + sign + after)
  for (const [before, after] of places) if (after !== '') for (const sign of alphabet) near.add(before + sign + after.slice(1))
  near.delete(term)
  return [...near]
}
