/**
 * Where a text stands in an input that no database keeps: one with a zero character, or with half of a character (a lone surrogate). Null where there is none.
 * Every procedure asks this of its whole input, so that no single field has to.
 */
export function unstorableText(input: unknown, path = ''): string | null {
  if (typeof input === 'string') return input.includes('\u0000') || !input.isWellFormed() ? path || 'input' : null
  if (input === null || typeof input !== 'object') return null
  for (const [key, value] of Object.entries(input)) {
    const found = unstorableText(key, path || 'input') ?? unstorableText(value, path ? `${path}.${key}` : key)
    if (found) return found
  }
  return null
}
