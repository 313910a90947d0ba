/** A fact of what a tablet sent: where it stands in it, and what it says. */
export type ContentLine = { name: string; text: string }

const spaced = (key: string) =>
  key
    .replaceAll(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll('-', ' ')
    .toLowerCase()

/**
 * Everything that a tablet sent, a line a value, whatever form it has: nothing is left out, since it is nowhere else. A list's entries are counted from 1; what is empty
 * is not shown.
 */
export function contentLines(content: unknown, path: readonly string[] = []): ContentLine[] {
  if (content === null || content === undefined || content === '') return []
  if (typeof content !== 'object') return [{ name: path.join(', '), text: String(content) }]
  if (Array.isArray(content)) return content.flatMap((value, at) => contentLines(value, [...path, String(at + 1)]))
  return Object.entries(content).flatMap(([key, value]) => contentLines(value, [...path, spaced(key)]))
}
