import type { Device } from '@almanac/contract/people'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import type { Display } from '@almanac/units/display'
import { formatClock, formatInstant } from '@almanac/units/format-clock'
import type { Words } from '@almanac/words/words'

/** A device as people speak of it: "Tomas’s tablet, Chrome", "Phone, Safari" without a name. */
export function deviceWords({ kind, browser, system }: Device, words: Words<'ownAccount'>, name?: string): string {
  const what = words(kind ?? 'device')
  return [name ? `${name.split(' ')[0]}’s ${what}` : `${what[0]?.toUpperCase()}${what.slice(1)}`, browser ?? system]
    .filter(Boolean)
    .join(', ')
}

/** Since when: "today 7:40 AM", or the day with it. */
export function sinceWords(
  instant: string,
  today: string,
  display: Pick<Display, 'locale' | 'timeZone'>,
  words: Words<'ownAccount'>,
): string {
  return dayIn(display.timeZone, instant) === today
    ? words('today', { time: formatClock(instant, display) })
    : formatInstant(instant, display)
}
