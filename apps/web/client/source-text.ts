import { factSourceNotes, factSources } from '@almanac/records/fact-source'
import { isIsoDay } from '@almanac/units/calendar/calendar-day'
import { type DayDisplay, formatDay } from '@almanac/units/format-day'
import type { Words } from '@almanac/words/words'

/** What is kept beside a fact before its day, by the message that says it. */
const KEPT = {
  visit: 'visit',
  'close-out': 'close-out',
  'said by link': 'link',
  ...(Object.fromEntries(factSources.map((source) => [`${factSourceNotes[source]},`, source])) as Record<
    string,
    (typeof factSources)[number]
  >),
} as const satisfies Record<string, string>

/** Where a fact came from, as it is kept ("visit 2026-03-04", "import beds.csv line 3"), in the reader's words; what a person wrote themselves stays as it is. */
export function sourceText(source: string, display: DayDisplay, words: Words<'factSource'>): string {
  const line = /^import (.+) line (\d+)$/s.exec(source)
  if (line) return words('importLine', { file: line[1] ?? '', line: line[2] ?? '' })
  const dated = /^(.+) (\d{4}-\d{2}-\d{2})$/s.exec(source)
  if (!dated?.[1] || !dated[2] || !isIsoDay(dated[2])) return source
  const day = formatDay(dated[2], display)
  const list = /^import (.+), last right$/s.exec(dated[1])
  if (list) return words('importList', { file: list[1] ?? '', day })
  const key = Object.entries(KEPT).find(([kept]) => kept === dated[1])?.[1]
  return key ? words(key, { day }) : `${dated[1]} ${day}`
}
