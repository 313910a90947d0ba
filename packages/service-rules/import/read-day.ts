import { addDays } from '@almanac/units/calendar/calendar-day'
import type { IsoDay } from '@almanac/units/calendar/day-number'
import { type DayDisplay, formatDay, formatDays } from '@almanac/units/format-day'
import { type DaySpan, readSpan, type SayDays } from './day-span.ts'
import type { DayOrder, DayPrecision, DayReading } from './import-types.ts'
import { type Reading, read, unreadable } from './reading.ts'

interface Bounds {
  /** ISO day in the company's zone; nothing may lie after it. */
  today: IsoDay
  dayOrder: DayOrder
}

export interface DayOptions extends Bounds {
  /** How its sentences write days. */
  display: DayDisplay
}

/** Nothing in these records is older; an earlier year is a slip. */
const OLDEST_DAY = '1950-01-01'
/**
 * "Before 2015" is closed 25 years earlier: resin lasts 5 to 25 years (UFC 3-240-13FN, 2-2.5.1.4), and what was older would be gone.
 */
const LONGEST_LIFE_YEARS = 25

const advice = 'Type it as 14 Mar 2015, Mar 2015, 2015 or before 2015.'
const about =
  /^(?:ca?\.?|circa|approx(?:\.|imately)?|about|around|abt\.?|roughly|~|≈|est\.?|estimated|maybe|probably|prob\.?|poss(?:ibly|\.)?)\s*(?=[\d'’a-z])/i
const aboutBehind = /\s*(?:\(?\?+\)?|\(?(?:approx|est|circa|about)\.?\)?|-?ish|or so)$/i
const before = /^(?:(before|prior to|pre-?|earlier than|older than|<)|(by|until|till|not after|<=|≤))\s*(?=[\d'’a-z])/i
const after = /^(?:(after|later than|post-?|>)|(since|from|not before|>=|≥))\s*(?=[\d'’a-z])/i
const part = /^(early|start of|beginning of|mid(?:dle of)?|late|end of)[\s-]+(?=[\d'’])/i
const range =
  /^(?:between\s+|from\s+)?(.+?)\s*(?:\s(?:-|–|—|to|and|or|until)\s|(?<=^(?:between\s+|from\s+)?(?:19|20)\d{2})\s*[-–—/]\s*(?=(?:19|20)\d{2}$))\s*(.+)$/i

/**
 * A date as firms write it: exact in several orders, month and year, season, year, decade, "before 2015", "ca. 2012", "2009?", "2010-2012", a
 * spreadsheet's day number. `earliestDay` is never after `latestDay`, and neither lies after today.
 */
export function readDay(text: string, options: DayOptions): Reading<DayReading> {
  const found = settled(text, options)
  return 'reason' in found ? unreadable(found.reason) : read(found.day, ...found.assumptions.map((say) => say(options.display)))
}

/** Whether a text can be read as a date. */
export const canBeDay = (text: string, options: Bounds): boolean => 'day' in settled(text, options)

function settled(text: string, options: Bounds): { day: DayReading; assumptions: SayDays[] } | { reason: string } {
  const plain = withoutTime(text)
  const found = qualified(plain, options)
  if (found === null) return { reason: `"${text}" is not understood as a date. ${advice}` }
  if ('reason' in found) return { reason: `"${text}": ${found.reason}` }
  const { today } = options
  if (found.earliestDay > today) return { reason: `"${text}" is in the future. Check the year.` }
  if (found.latestDay < OLDEST_DAY) return { reason: `"${text}" is before 1950. Check the year.` }
  const latestDay = earlierOf(found.latestDay, today)
  const earliestDay = found.earliestDay < OLDEST_DAY ? OLDEST_DAY : found.earliestDay
  return { day: { earliestDay, latestDay, asWritten: text, precision: found.precision }, assumptions: found.assumptions }
}

type Qualified = { earliestDay: IsoDay; latestDay: IsoDay; precision: DayPrecision; assumptions: SayDays[] } | { reason: string } | null

function qualified(plain: string, options: Bounds): Qualified {
  const beforeMatch = before.exec(plain)
  if (beforeMatch) return openBefore(core(plain.slice(beforeMatch[0].length), options), beforeMatch[1] !== undefined)
  const afterMatch = after.exec(plain)
  const rangeMatch = range.exec(plain)
  if (rangeMatch) return between(core(rangeMatch[1] ?? '', options), core(rangeMatch[2] ?? '', options))
  if (afterMatch) return openAfter(core(plain.slice(afterMatch[0].length), options), afterMatch[1] !== undefined, options.today)
  if (/^pre$/i.test(plain)) return null
  const doubtful = plain.replace(about, '').replace(aboutBehind, '')
  const inside = core(doubtful, options)
  return doubtful === plain || inside === null || 'reason' in inside ? inside : widened(inside)
}

/** A plain date, or a third of a year named by "early", "mid" and "late". */
function core(text: string, options: Bounds): Qualified {
  const trimmed = text.trim().replace(/[.,;]+$/, '')
  const partMatch = part.exec(trimmed)
  const span = readSpan(partMatch ? trimmed.slice(partMatch[0].length) : trimmed, options.dayOrder, options.today)
  if (span === null || 'reason' in span) return span
  if (!partMatch) return noted(span)
  if (span.precision !== 'year') return null
  const which = (partMatch[1] ?? '').toLowerCase()
  const year = span.earliestDay.slice(0, 4)
  const [from, to] = which.startsWith('mid') ? ['05-01', '08-31'] : /^(?:late|end)/.test(which) ? ['09-01', '12-31'] : ['01-01', '04-30']
  const [earliestDay, latestDay] = [`${year}-${from}`, `${year}-${to}`]
  const sentence: SayDays = (display) => `"${trimmed}" was read as ${formatDays(earliestDay, latestDay, display)}.`
  return { earliestDay, latestDay, precision: 'season', assumptions: [sentence] }
}

function noted(span: DaySpan): Qualified {
  return {
    earliestDay: span.earliestDay,
    latestDay: span.latestDay,
    precision: span.precision,
    assumptions: span.assumption ? [span.assumption] : [],
  }
}

function openBefore(inside: Qualified, excluded: boolean): Qualified {
  if (inside === null || 'reason' in inside) return inside
  const latestDay = excluded ? addDays(inside.earliestDay, -1) : inside.latestDay
  const earliestDay = `${Number(latestDay.slice(0, 4)) - LONGEST_LIFE_YEARS}-01-01`
  const sentence: SayDays = (display) =>
    `Read as at most ${LONGEST_LIFE_YEARS} years before that: ${formatDays(earliestDay, latestDay, display)}.`
  return { earliestDay, latestDay, precision: 'before', assumptions: [...inside.assumptions, sentence] }
}

function openAfter(inside: Qualified, excluded: boolean, today: IsoDay): Qualified {
  if (inside === null || 'reason' in inside) return inside
  const earliestDay = excluded ? addDays(inside.latestDay, 1) : inside.earliestDay
  if (earliestDay > today) return { reason: 'It is in the future. Check the year.' }
  const sentence: SayDays = (display) => `Read as ${formatDay(earliestDay, display)} to today.`
  return { earliestDay, latestDay: today, precision: 'after', assumptions: [...inside.assumptions, sentence] }
}

function between(from: Qualified, to: Qualified): Qualified {
  if (from === null || 'reason' in from) return from
  if (to === null || 'reason' in to) return to
  if (from.earliestDay > to.latestDay) return { reason: 'The second date is before the first. Type the earlier one first.' }
  const assumptions = [...from.assumptions, ...to.assumptions]
  return { earliestDay: from.earliestDay, latestDay: to.latestDay, precision: 'between', assumptions }
}

/** "About" adds a year to either side of a year, three months to a month or season, one month to a day. Common practice, no source. */
function widened(inside: Exclude<Qualified, null | { reason: string }>): Qualified {
  const days = inside.precision === 'day' ? 31 : inside.precision === 'month' || inside.precision === 'season' ? 92 : null
  const earliestDay = days ? addDays(inside.earliestDay, -days) : `${Number(inside.earliestDay.slice(0, 4)) - 1}-01-01`
  const latestDay = days ? addDays(inside.latestDay, days) : `${Number(inside.latestDay.slice(0, 4)) + 1}-12-31`
  return {
    earliestDay,
    latestDay,
    precision: 'about',
    assumptions: [...inside.assumptions, (display) => `"About" was read as ${formatDays(earliestDay, latestDay, display)}.`],
  }
}

const weekday = /^(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?\.?,?\s+/i

function withoutTime(text: string): string {
  const plain = text.trim().replace(/\s+/g, ' ').replace(weekday, '')
  return plain.replace(/(\d)(?:T|,? )\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?\s*(?:[ap]\.?m\.?)?(?:Z|[+-]\d{2}:?\d{2})?$/i, '$1')
}

/** ISO days compare as text, so the numeric minimum does not serve. */
function earlierOf(one: IsoDay, other: IsoDay): IsoDay {
  return one.localeCompare(other) <= 0 ? one : other
}
