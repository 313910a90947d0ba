import { addDays } from '@almanac/units/calendar/calendar-day'
import { dayIn, instantIn } from '@almanac/units/calendar/zone-clock'

/**
 * Mails and texts go out between a firm's own hours, in minutes of the day at the customer's, and within these: in the United States nobody may be called before 8
 * or after 9 at their own clock (47 CFR 64.1200(c)(1)).
 */
export const SENDING_BOUNDS = { from: 8 * 60, until: 21 * 60 } as const

export type SendingHours = { from: number; until: number }

/** When a message may go out: now, or at the next opening in that zone, whatever its clocks do that night. */
export function nextSendingTime(timeZone: string, at: Date, { from, until }: SendingHours): Date {
  const day = dayIn(timeZone, at)
  const opens = instantIn(timeZone, day, from)
  if (at < opens) return opens
  return at < instantIn(timeZone, day, until) ? at : instantIn(timeZone, addDays(day, 1), from)
}

/** Minutes until a server is asked again after so many tries; null when it is asked no more. Three days in all: common practice, no source. */
export function minutesToNextTry(tries: number): number | null {
  return [1, 5, 15, 60, 240, 720, 1440, 1440][tries - 1] ?? null
}

/** A message that has been on its way for so long will hear nothing more from the process that sent it. */
export const SENDING_LOST_AFTER_MS = 5 * 60_000
