import { addDays, isoDayOf } from '@almanac/units/calendar/calendar-day'
import { daysInMonth, type IsoDay, isoDay } from '@almanac/units/calendar/day-number'
import { type DayDisplay, formatDay, formatMonth } from '@almanac/units/format-day'
import type { DayOrder, DayPrecision } from './import-types.ts'
import { monthOf, monthPattern } from './month-names.ts'

/** A sentence that names days, once it is known how they are written. */
export type SayDays = (display: DayDisplay) => string

/** A stretch of days a plain date text names, before words such as "before" or "about" are applied. */
export interface DaySpan {
  earliestDay: IsoDay
  latestDay: IsoDay
  precision: DayPrecision
  assumption?: SayDays
}

export type SpanReading = DaySpan | { reason: string } | null

/** The first and last day of a year, of a month, or one day; null where the calendar has none. */
function yearSpan(year: number): DaySpan {
  return { earliestDay: `${year}-01-01`, latestDay: `${year}-12-31`, precision: 'year' }
}

function monthSpan(year: number, month: number): DaySpan | null {
  const first = isoDayOf(year, month, 1)
  const last = first && isoDayOf(year, month, daysInMonth(year, month))
  return first && last ? { earliestDay: first, latestDay: last, precision: 'month' } : null
}

function daySpan(year: number, month: number, dayOfMonth: number): SpanReading {
  const one = isoDayOf(year, month, dayOfMonth)
  return one
    ? { earliestDay: one, latestDay: one, precision: 'day' }
    : { reason: month < 1 || month > 12 ? `There is no month ${month}.` : `Month ${month} of ${year} has no day ${dayOfMonth}.` }
}

/** A two-digit year is the latest such year that is not in the future. */
function fullYear(text: string, today: IsoDay): number {
  const year = Number(text.replace(/^['’]/, ''))
  if (text.replace(/^['’]/, '').length > 2) return year
  return 2000 + year <= Number(today.slice(0, 4)) ? 2000 + year : 1900 + year
}

const dmy = /^(\d{1,2})\s*[/.\-\s]\s*(\d{1,2})\s*[/.\-\s]\s*(\d{4}|['’]?\d{2})$/
const ymd = /^(\d{4})\s*[/.\-\s]\s*(\d{1,2})\s*[/.\-\s]\s*(\d{1,2})$/
const year = "(\\d{4}|['’]\\d{2}|\\d{2})"
const dayMonthYear = new RegExp(`^(\\d{1,2})(?:st|nd|rd|th|\\.)?[\\s-]*(?:of\\s+)?(${monthPattern})[\\s,.-]*${year}$`, 'i')
const monthDayYear = new RegExp(`^(${monthPattern})[\\s-]*(\\d{1,2})(?:st|nd|rd|th)?[\\s,.-]+${year}$`, 'i')
const monthYear = new RegExp(`^(${monthPattern})(?:[\\s,/-]+of)?([\\s,./-]*)${year}$`, 'i')
const yearMonth = new RegExp(`^(\\d{4})[\\s,./-]*(${monthPattern})$`, 'i')
const seasonYear = /^(spring|summer|autumn|fall|winter)[\s,/-]+(?:of\s+)?(\d{4}|['’]\d{2})$/i

/** Reads a date text without qualifying words. Null: not a date at all; `reason`: a date, but one that cannot be settled. */
export function readSpan(text: string, order: DayOrder, today: IsoDay): SpanReading {
  let match = /^(?:19|20)\d{2}$/.exec(text)
  if (match) return yearSpan(Number(text))
  match = /^['’](\d{2})$/.exec(text)
  if (match) return yearSpan(fullYear(match[1] ?? '', today))
  match = ymd.exec(text) ?? /^((?:19|20)\d{2})(\d{2})(\d{2})$/.exec(text)
  if (match) return daySpan(Number(match[1]), Number(match[2]), Number(match[3]))
  match = dmy.exec(text)
  if (match) return numericSpan(Number(match[1]), Number(match[2]), fullYear(match[3] ?? '', today), order)
  match = /^(\d{5})(?:\.\d+)?$/.exec(text)
  if (match) return serialSpan(Number(match[1]))
  match = /^(\d{1,2})\s*[/.-]\s*(\d{4}|['’]?\d{2})$/.exec(text)
  if (match) return monthNumberSpan(text, Number(match[1]), match[2] ?? '', today)
  match = /^(\d{4})\s*[/.-]\s*(\d{1,2})$/.exec(text)
  if (match) return monthSpan(Number(match[1]), Number(match[2]))
  match = dayMonthYear.exec(text)
  if (match) return daySpan(fullYear(match[3] ?? '', today), monthOf(match[2] ?? '') ?? 0, Number(match[1]))
  match = monthDayYear.exec(text)
  if (match) return daySpan(fullYear(match[3] ?? '', today), monthOf(match[1] ?? '') ?? 0, Number(match[2]))
  match = monthYear.exec(text)
  if (match) return namedMonthSpan(text, match, today)
  match = yearMonth.exec(text)
  if (match) return monthSpan(Number(match[1]), monthOf(match[2] ?? '') ?? 0)
  match = seasonYear.exec(text)
  if (match) return seasonSpan((match[1] ?? '').toLowerCase(), fullYear(match[2] ?? '', today))
  match = /^q([1-4])[\s/-]*(\d{4})$/i.exec(text)
  if (match) return quarterSpan(Number(match[1]), Number(match[2]))
  match = /^(\d{4}|['’]?\d{2})['’]?s$/i.exec(text)
  return match ? decadeSpan(match[1] ?? '', today) : null
}

function numericSpan(first: number, second: number, yearNumber: number, order: DayOrder): SpanReading {
  if (first > 12 || order === 'day-first' || first === second) {
    if (second <= 12 || first > 12) return daySpan(yearNumber, second, first)
    return { reason: `The dates of this column put the day first, but month ${second} does not exist.` }
  }
  if (second > 12) return daySpan(yearNumber, first, second)
  if (order === 'month-first') return daySpan(yearNumber, first, second)
  return { reason: 'It could put the day or the month first. Choose the order for this column, or type it as 4 Mar 2015.' }
}

/** Excel counts days from 1899-12-30 (its 1900 system, right from March 1900 on). */
function serialSpan(serial: number): SpanReading {
  if (serial < 18_264 || serial > 73_050) return null
  const day = isoDay(serial - 25_569)
  const assumption: SayDays = (display) => `${serial} was read as a spreadsheet's day number: ${formatDay(day, display)}.`
  return { earliestDay: day, latestDay: day, precision: 'day', assumption }
}

function monthNumberSpan(text: string, month: number, yearText: string, today: IsoDay): SpanReading {
  const span = monthSpan(fullYear(yearText, today), month)
  if (!span) return { reason: 'It is not a month and a year. Type it as Mar 2015 or 14 Mar 2015.' }
  return yearText.length === 2 ? { ...span, assumption: asMonth(text, span) } : span
}

/** "May-18" is how spreadsheets show a month and year; "May 18" might as well be a day without a year. */
function namedMonthSpan(text: string, match: RegExpExecArray, today: IsoDay): SpanReading {
  const yearText = match[3] ?? ''
  const span = monthSpan(fullYear(yearText, today), monthOf(match[1] ?? '') ?? 0)
  if (!span || yearText.length !== 2) return span
  if (!/[-/]/.test(match[2] ?? '') && Number(yearText) <= 31)
    return { reason: 'This may be a day without a year. Type the year with four digits.' }
  return { ...span, assumption: asMonth(text, span) }
}

const asMonth =
  (text: string, { earliestDay }: DaySpan): SayDays =>
  (display) =>
    `"${text}" was read as a month and a year: ${formatMonth(earliestDay, display)}.`

function seasonSpan(name: string, yearNumber: number): DaySpan {
  const months: Record<string, [string, string, string]> = {
    spring: [`${yearNumber}-03-01`, `${yearNumber}-05-31`, 'March to May'],
    summer: [`${yearNumber}-06-01`, `${yearNumber}-08-31`, 'June to August'],
    winter: [`${yearNumber - 1}-12-01`, addDays(`${yearNumber + 1}-03-01`, -1), 'December before it to the February after it'],
  }
  const [earliestDay, latestDay, words] = months[name] ?? [`${yearNumber}-09-01`, `${yearNumber}-11-30`, 'September to November']
  return { earliestDay, latestDay, precision: 'season', assumption: () => `${name} ${yearNumber} was read as ${words}.` }
}

function quarterSpan(quarter: number, yearNumber: number): SpanReading {
  const first = monthSpan(yearNumber, quarter * 3 - 2)
  const last = monthSpan(yearNumber, quarter * 3)
  return first && last ? { earliestDay: first.earliestDay, latestDay: last.latestDay, precision: 'season' } : null
}

function decadeSpan(text: string, today: IsoDay): SpanReading {
  const first = fullYear(text, today)
  if (first % 10 !== 0) return null
  return { earliestDay: `${first}-01-01`, latestDay: `${first + 9}-12-31`, precision: 'between' }
}
