import { formatDays } from '@almanac/units/format-day'
import type { DayReading } from './import-types.ts'
import { dateInText, eventPattern, type NoteFactKind, noDateNear, notDone, otherThing } from './notes-words.ts'
import { type DayOptions, readDay } from './read-day.ts'

/** A dated event found in notes. `quote` is the piece of text it was taken from, for the screen. */
export interface NoteFact {
  kind: NoteFactKind
  day: DayReading
  quote: string
  assumptions: string[]
}

/** An event's words beside a date that were not believed, and why. */
export interface NotePassedOver {
  quote: string
  reason: string
}

export interface NoteFindings {
  facts: NoteFact[]
  passedOver: NotePassedOver[]
}

/** Between an event and its date there may be a few words, but not another sentence. */
const FARTHEST_CHARACTERS = 40
const FARTHEST_BEFORE = 16
/** The longest words of `noDateNear` with their marks and blanks, and what stands before them. */
const FARTHEST_NEAR = 24
const firstDate = new RegExp(dateInText.source, 'i')

/**
 * Dated events in a notes column: "rebed 2016", "new resin 3/14", "resin changed May 2018", "2009 install". Quotes, plans, denials, phone numbers and other things being
 * installed are passed over. A date that could put day or month first covers both days unless the order is known.
 */
export function findInNotes(notes: string, options: DayOptions): NoteFindings {
  const findings: NoteFindings = { facts: [], passedOver: [] }
  for (const clause of clausesOf(notes)) readClause(clause, options, findings)
  return findings
}

/** Clauses end at ; | newline, at commas and full stops that do not belong to a date or an abbreviation, and at "but" and "then". */
function clausesOf(notes: string): string[] {
  const clauses: string[] = []
  for (const piece of piecesOf(notes)) {
    // Every date has a digit.
    const date = /\d/.test(piece) ? firstDate.exec(piece) : null
    const isDateAlone = date !== null && date[0].length >= piece.length - 1
    // "resin replaced by us, June 2014": the date belongs to what stands before the comma.
    if (isDateAlone && clauses.length > 0) clauses.push(`${clauses.pop()} ${piece}`)
    else clauses.push(piece)
  }
  return clauses
}

function piecesOf(notes: string): string[] {
  return notes
    .split(
      /[;|\n\r]+|\s+(?:but|then)\s+|(?<!\b(?:jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec|ca|c|approx|inst|no|st)|\d)\.\s+|(?<=\d{4})\.\s+|(?<!\b(?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*\.?\s*\d{0,2}(?:st|nd|rd|th)?),\s*/i,
    )
    .map((clause) => clause.replace(/\s+/g, ' ').trim())
    .filter((clause) => clause !== '')
}

interface Place {
  start: number
  end: number
}

/** Weighs no stretch of the clause more than a few times: its cost grows with its length, not with events times dates. */
function readClause(clause: string, options: DayOptions, findings: NoteFindings): void {
  const lower = clause.toLowerCase()
  const events = [...lower.matchAll(eventPattern)].map((match) => ({
    kind: (match.groups?.rebedded ? 'rebedded' : 'installed') as NoteFactKind,
    start: match.index,
    end: match.index + match[0].length,
  }))
  if (events.length === 0) return
  const dates: Place[] = [...lower.matchAll(dateInText)]
    .map((match) => ({ start: match.index, end: match.index + match[0].length }))
    .filter((date) => !noDateNear.test(lower.slice(Math.max(0, date.start - FARTHEST_NEAR), date.start)))
  const used = new Set<Place>()
  let ahead = 0
  for (const [index, event] of events.entries()) {
    const nextStart = events[index + 1]?.start ?? lower.length
    while ((dates[ahead]?.start ?? lower.length) < event.end) ahead++
    const next = dates[ahead]
    const after = next && next.start < nextStart && next.start - event.end <= FARTHEST_CHARACTERS ? next : undefined
    const date = after ?? dateBefore(event, dates, ahead, used)
    if (!date || used.has(date)) continue
    used.add(date)
    const quote = clause.slice(Math.min(event.start, date.start), Math.max(event.end, date.end))
    const from = events[index - 1]?.end ?? 0
    const doubt = whyDoubt(
      event.kind,
      lower.slice(from, Math.max(nextStart === lower.length ? lower.length : date.end, date.end)),
      lower.slice(from, event.start),
    )
    if (doubt) findings.passedOver.push({ quote, reason: doubt })
    else {
      addFact(event.kind, clause.slice(date.start, date.end), quote, options, findings)
      const further = date === after ? furtherDates(lower, date, dates, ahead + 1) : []
      for (const more of further) {
        used.add(more)
        addFact(event.kind, clause.slice(more.start, more.end), clause.slice(event.start, more.end), options, findings)
      }
    }
  }
}

/** "2009 install": the last date not far before the event that no other has taken; `until` is the first one behind the event's start, or later. */
function dateBefore(event: Place, dates: readonly Place[], until: number, used: ReadonlySet<Place>): Place | undefined {
  for (let at = until - 1; at >= 0; at--) {
    const date = dates[at]
    if (!date || event.start - date.end > FARTHEST_BEFORE) return
    if (date.end <= event.start && !used.has(date)) return date
  }
}

/** "rebed 2014 and 2021": dates joined to the first by nothing but "and", "&", "/" or a comma. */
function furtherDates(clause: string, first: Place, dates: readonly Place[], from: number): Place[] {
  const further: Place[] = []
  let end = first.end
  for (let at = from; at < dates.length; at++) {
    const date = dates[at]
    if (!date) break
    // What follows a date that is not joined is not joined either.
    if (!/^(?:and|&|\+|,|also|again|\s)+$/.test(clause.slice(end, date.start))) break
    further.push(date)
    end = date.end
  }
  return further
}

function whyDoubt(kind: NoteFactKind, around: string, ahead: string): string | null {
  const word = notDone.exec(around.replace(/\bno\.\s*\d/g, ' '))
  if (word) return `"${word[0]}" says it was not done, or not then.`
  const thing = kind === 'installed' ? otherThing.exec(around) : /\b(?:flower|garden|guest|river|creek|twin|king|queen)\s*$/.exec(ahead)
  return thing ? `It seems to be about something else ("${thing[0].trim()}").` : null
}

function addFact(kind: NoteFactKind, dateText: string, quote: string, options: DayOptions, findings: NoteFindings): void {
  const reading = readDay(dateText, options)
  if (reading.ok) {
    findings.facts.push({ kind, day: { ...reading.value, asWritten: quote }, quote, assumptions: reading.assumptions })
    return
  }
  const dayFirst = readDay(dateText, { ...options, dayOrder: 'day-first' })
  const monthFirst = readDay(dateText, { ...options, dayOrder: 'month-first' })
  if (options.dayOrder !== 'undecided' || !dayFirst.ok || !monthFirst.ok) {
    findings.passedOver.push({ quote, reason: reading.reason })
    return
  }
  const [first, last] = [dayFirst.value, monthFirst.value].sort((a, b) => a.earliestDay.localeCompare(b.earliestDay))
  if (!first || !last) return
  const day: DayReading = { earliestDay: first.earliestDay, latestDay: last.latestDay, asWritten: quote, precision: 'between' }
  findings.facts.push({
    kind,
    day,
    quote,
    assumptions: [
      `"${dateText}" may put the day or the month first: taken as ${formatDays(day.earliestDay, day.latestDay, options.display)}.`,
    ],
  })
}
