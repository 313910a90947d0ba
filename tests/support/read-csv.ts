import { readFileSync } from 'node:fs'

/** Rows of a plain reference CSV by column name; quotes only around whole fields, no commas within. */
export function readCsv(path: string): Record<string, string>[] {
  const [head, ...rows] = readFileSync(path, 'utf8').trim().split(/\r?\n/)
  const names = (head ?? '').split(',').map(unquoted)
  return rows.map((row) => Object.fromEntries(row.split(',').map((value, i) => [names[i] ?? '', unquoted(value)])))
}

function unquoted(text: string): string {
  return text.replace(/^"|"$/g, '')
}
