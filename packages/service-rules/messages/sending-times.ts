import { addDays } from '@almanac/units/calendar/calendar-day'
import { dayIn, instantIn } from '@almanac/units/calendar/zone-clock'

/**
 * Mails and texts go out between these minutes of the company's day. In the United States nobody may be called before 8 or after 9 at their own clock
 * (47 CFR 64.1200(c)(1)); an hour less in the evening is common practice, no source.
 */
const OPENS = 8 * 60
const CLOSES = 20 * 60

/** When a message may go out: now, or at the next opening in the company's zone, whatever its clocks do that night. */
export function nextSendingTime(timeZone: string, at: Date): Date {
  const day = dayIn(timeZone, at)
  const opens = instantIn(timeZone, day, OPENS)
  if (at < opens) return opens
  return at < instantIn(timeZone, day, CLOSES) ? at : instantIn(timeZone, addDays(day, 1), OPENS)
}

/** Minutes until a server is asked again after so many tries; null when it is asked no more. Three days in all: common practice, no source. */
export function minutesToNextTry(tries: number): number | null {
  return [1, 5, 15, 60, 240, 720, 1440, 1440][tries - 1] ?? null
}

/** A message that has been on its way for so long will hear nothing more from the process that sent it. */
export const SENDING_LOST_AFTER_MS = 5 * 60_000
