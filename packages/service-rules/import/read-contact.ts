import type { ConsentReading } from './import-types.ts'
import { phoneDigits } from './normalise.ts'
import { type Reading, read, unreadable } from './reading.ts'

/** What stands before or behind a number and is no part of it. */
const BEFORE_NUMBER = /^(?:tel|phone|ph|mob(?:ile)?|cell|home|work|office|[chwmtp])\.?\s*:?\s*(?=[+(\d])/i
const BEHIND_NUMBER = /\s*\((?:[a-z ]+)\)\s*$|\s+(?:cell|mobile|mob|home|work|office)$/i
const NUMBER = /^[+(\d][\d\s().\-–/+]*(?:(?:ext?|extension|x|#)\.?\s*\d+)?$/i

function numberIn(part: string): string | null {
  const number = part.trim().replace(BEFORE_NUMBER, '').replace(BEHIND_NUMBER, '')
  const digits = phoneDigits(number)
  return digits.length >= 7 && digits.length <= 15 && NUMBER.test(number) ? number : null
}

/** The phone numbers of a cell as written, the first first, each of 7 to 15 digits (15 by ITU-T E.164); "555-0142 / 555-0199" holds two. Words beside them are left, and that is said. */
export function readPhones(text: string): Reading<string[]> {
  const parts = text.split(/\s*(?:\/|;|,|\bor\b|\|)\s*/i).filter((part) => part !== '')
  const whole = parts.some((part) => phoneDigits(part).length >= 7) ? parts : [text]
  const numbers = whole.map(numberIn).filter((number) => number !== null)
  // Where a number stands first that cannot be one, nobody knows what the others are.
  const first = whole.find((part) => phoneDigits(part).length >= 7) ?? text
  if (numbers.length === 0 || numberIn(first) === null)
    return unreadable(`"${text}" is not a phone number. Type 7 to 15 digits, such as 01632 960123, or leave it blank.`)
  return numbers.length < whole.length ? read(numbers, `Only the phone numbers of "${text}" were kept.`) : read(numbers)
}

/** An e-mail address; of several in one cell the first is kept, and said so. */
export function readEmail(text: string): Reading<string> {
  const plain = text.replace(/^mailto:/i, '').trim()
  const parts = plain.split(/[\s,;]+/).filter((part) => part !== '')
  const first = (parts.find((part) => part.includes('@')) ?? plain).replace(/^<|>$/g, '')
  if (first.length > 254 || !/^[^\s@<>"(),:;[\]\\]+@[^\s@.<>"(),:;[\]\\]+(?:\.[^\s@.<>"(),:;[\]\\]+)+$/.test(first)) {
    return unreadable(`"${text}" is not an email address. Type one like name@example.com, or leave it blank.`)
  }
  return parts.length > 1 ? read(first, `Only ${first} of "${text}" was kept.`) : read(first)
}

/** Yes or no, in the ways people tick a column. */
export function readYesNo(text: string): Reading<boolean> {
  const plain = text.toLowerCase().replace(/[.!]+$/, '')
  if (/^(?:y|yes|yep|true|t|1|x|✓|✔|ok|okay|opt(?:ed)?[\s-]?in|agreed?|allowed|consent(?:ed)?)$/.test(plain)) return read(true)
  if (/^(?:n|no|nope|false|f|0|never|opt(?:ed)?[\s-]?out|declined|refused|do not|don't|stop)$/.test(plain)) return read(false)
  return unreadable(`"${text}" is neither yes nor no. Type yes or no, or leave it blank.`)
}

/** Nobody said anything. */
export const silentConsent: ConsentReading = { email: null, phone: null, text: null, letter: null }

/** Asked to be left in peace. */
export const refusedConsent: ConsentReading = { email: false, phone: false, text: false, letter: false }

const channelWords = {
  email: /\be-?mails?\b/,
  phone: /\b(?:phones?|calls?|ring|tel(?:ephone)?)\b/,
  text: /\b(?:texts?|sms)\b/,
  letter: /\b(?:letters?|post(?:al)?|mail(?:ing)?|write)\b/,
}

/**
 * A consent column for all channels: "yes" and "no" answer for all of them, "e-mail only" says no to the others, "e-mail and phone" leaves the rest unanswered,
 * "no calls" refuses one.
 */
export function readConsent(text: string): Reading<ConsentReading> {
  const plain = text.toLowerCase().replace(/^(?:yes|ok)\s*[-:,–]\s*/, '')
  const yesNo = readYesNo(plain)
  if (yesNo.ok) return read({ email: yesNo.value, phone: yesNo.value, text: yesNo.value, letter: yesNo.value })
  const refusing = /\b(?:no|not|don't|never|stop)\b/.test(plain)
  const only = /\bonly\b/.test(plain)
  if (/\b(?:all|any|anything)\b/.test(plain) && !refusing) return read({ email: true, phone: true, text: true, letter: true })
  if (/^(?:no(?:ne| contact| marketing| reminders)|do not contact|don't contact)$/.test(plain))
    return read({ email: false, phone: false, text: false, letter: false })
  const consent: ConsentReading = { ...silentConsent }
  const inLetters = plain.replace(/\be-?mails?\b/g, ' ')
  let named = 0
  for (const channel of ['email', 'phone', 'text', 'letter'] as const) {
    if (channelWords[channel].test(channel === 'letter' ? inLetters : plain)) {
      consent[channel] = !refusing
      named++
    } else if (only) consent[channel] = refusing ? null : false
  }
  if (named === 0 || (refusing && /\b(?:but|yes|ok|only)\b/.test(plain))) {
    return unreadable(`"${text}" is not understood as consent. Type yes, no, or the channels, such as "email only".`)
  }
  return read(consent)
}
