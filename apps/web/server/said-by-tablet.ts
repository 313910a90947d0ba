import 'server-only'
import { isIsoDay } from '@almanac/units/calendar/calendar-day'
import { formatInstant } from '@almanac/units/format-clock'
import { formatDay } from '@almanac/units/format-day'
import { showNumber } from '@almanac/units/format-number'
import type { Key, Words } from '@almanac/words/words'
import { wordsIn } from '@almanac/words/words-in'

/** A fact of what a tablet sent, in words: what it is, and what was said of it. */
export type SaidLine = { name: string; text: string }
type Reader = { locale: string; timeZone: string }
type Facts = Readonly<Record<string, unknown>>

const INSTANT = /^\d{4}-\d{2}-\d{2}T[\d:.]+(Z|[+-]\d{2}:\d{2})$/
const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i

const isFacts = (value: unknown): value is Facts => typeof value === 'object' && value !== null && !Array.isArray(value)
const listOf = (value: unknown): Facts[] => (Array.isArray(value) ? value.filter(isFacts) : [])

/** A message whose key is made from a value; the value itself where there is none. */
function inWords(words: { has: (key: never) => boolean }, key: string, otherwise: string): string {
  try {
    return words.has(key as never) ? (words as unknown as (key: string) => string)(key) : otherwise
  } catch {
    // The library takes "constructor" and "x.length" for messages, which are none.
    return otherwise
  }
}

function saidAs({ locale, timeZone }: Reader) {
  const display = { locale, timeZone }
  const facts = wordsIn(locale, 'tabletFact')
  const closing = wordsIn(locale, 'closeOut')
  const asks = wordsIn(locale, 'asks')
  const stops = wordsIn(locale, 'stop')
  const yesOrNo = (value: unknown) => facts(value ? 'yes' : 'no')
  /** A value that needs no words of its own. */
  const plain = (value: unknown): string => {
    if (typeof value === 'boolean') return yesOrNo(value)
    if (typeof value === 'number') return showNumber(value, 3, display) ?? String(value)
    const text = String(value)
    if (isIsoDay(text)) return formatDay(text, display)
    return INSTANT.test(text) ? formatInstant(text, display) : text
  }
  const withReason = (text: string, why: unknown) =>
    typeof why === 'string' && why.trim() ? facts('withReason', { value: text, reason: why.trim() }) : text
  const amount = (value: unknown, unit: unknown) => `${plain(value)} ${String(unit ?? '')}`.trim().replace('ft3', 'ft³')
  const checked = ({ stepId, confirmed, note }: Facts): SaidLine => {
    const id = String(stepId)
    const check = Object.hasOwn(CHECKED, id) ? CHECKED[id] : undefined
    const name = check ? closing(check) : inWords(asks, id, inWords(stops, `do/${id}`, spaced(id)))
    return { name, text: typeof note === 'string' && note ? inWords(asks, `${id}/${note}`, note) : yesOrNo(confirmed) }
  }
  const measured = ({ kind, enteredValue, enteredUnit, value, why }: Facts): SaidLine => ({
    name: inWords(facts, `measured/${String(kind)}`, spaced(String(kind))),
    text: withReason(amount(enteredValue ?? value, enteredUnit), why),
  })
  const part = ({ name, quantity, unit, why }: Facts): SaidLine => ({
    name: facts('part'),
    text: withReason(`${String(name)}: ${amount(quantity, unit)}`, why),
  })
  const valued = <Room extends 'outcome' | 'jobKind' | 'endCause' | 'resinKind'>(room: Room, value: unknown) =>
    inWords(wordsIn(locale, room) as Words<'outcome'>, String(value), String(value))
  /** What has a name of its own, by its key in a record; a list there gives a line for each. */
  const known: Readonly<Record<string, (value: unknown) => SaidLine[]>> = {
    outcome: (value) => [{ name: closing('outcome'), text: valued('outcome', value) }],
    jobKind: (value) => [{ name: facts('jobKind'), text: valued('jobKind', value) }],
    workDay: (value) => [{ name: closing('workDay'), text: plain(value) }],
    startedAt: (value) => [{ name: facts('started'), text: plain(value) }],
    finishedAt: (value) => [{ name: facts('finished'), text: plain(value) }],
    reason: (value) => [{ name: closing('found'), text: plain(value) }],
    hardnessReason: (value) => [{ name: facts('hardnessReason'), text: inWords(closing, `outlet/${value}`, plain(value)) }],
    notes: (value) => [{ name: closing('notes'), text: plain(value) }],
    checks: (value) => listOf(value).map(checked),
    measurements: (value) => listOf(value).map(measured),
    partsUsed: (value) => listOf(value).map(part),
    takenOut: (value) => [{ name: closing('takenOut'), text: yesOrNo(value) }],
    endCause: (value) => [{ name: closing('whyEnded'), text: valued('endCause', value) }],
    evidence: (value) => [{ name: closing('evidence'), text: plain(value) }],
    resinKind: (value) => [{ name: closing('resin'), text: valued('resinKind', value) }],
    enteredVolume: (value) => (isFacts(value) ? [{ name: closing('volume'), text: amount(value.value, value.unit) }] : []),
    gravelLb: (value) => [{ name: closing('gravel'), text: amount(value, 'lb') }],
    tubeCutIn: (value) => [{ name: closing('tube'), text: amount(value, 'in') }],
  }
  return {
    known,
    plain,
    lost: ({ from, until }: Facts) => ({ name: facts('missing'), text: facts('fromUntil', { from: plain(from), until: plain(until) }) }),
  }
}

/** Checks of a record that are no question of the procedure. */
const CHECKED: Readonly<Record<string, Key<'closeOut'> & ('bypassProven' | 'pressureZero' | 'backInService')>> = {
  'bypass-proven': 'bypassProven',
  'pressure-zero': 'pressureZero',
  'bypass-returned': 'backInService',
}

const spaced = (key: string) =>
  key
    .replaceAll(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll('-', ' ')
    .toLowerCase()

/** Said by another fact beside it. */
const TWICE = ['volumeFt3']

/**
 * Everything that a tablet sent, a line a fact, in words where this release knows them and else under the name that it has: nothing is left out, since it is nowhere
 * else. What is empty is not shown, nor are ids, which say nothing.
 */
export function saidByTablet(content: unknown, reader: Reader): SaidLine[] {
  const { known, plain, lost } = saidAs(reader)
  const lines = (value: unknown, path: readonly string[]): SaidLine[] => {
    if (value === null || value === undefined || value === '') return []
    if (typeof value === 'string' && UUID.test(value)) return []
    if (typeof value !== 'object') return [{ name: path.join(', '), text: plain(value) }]
    if (Array.isArray(value)) return value.flatMap((one, at) => lines(one, [...path, String(at + 1)]))
    return Object.entries(value).flatMap(([key, one]) => {
      if (one === null || one === '' || (TWICE.includes(key) && 'enteredVolume' in value)) return []
      const own = Object.hasOwn(known, key) ? known[key] : undefined
      if (own) return own(one)
      // What only holds facts has no name that says anything; a question in words keeps its own.
      return lines(one, isFacts(one) ? path : [...path, /^\p{Lu}/u.test(key) ? key : spaced(key)])
    })
  }
  if (isFacts(content) && typeof content.from === 'number' && typeof content.until === 'number') return [lost(content)]
  return lines(content, [])
}
