import { instantIn } from '@almanac/runtime/clock'

/** The instant at which the clock shows 'HH:MM' on a calendar day in a zone. */
export function instantAt(timeZone: string, day: string, clockTime: string): Date {
  const [hour = '', minute = ''] = clockTime.split(':')
  return instantIn(timeZone, day, Number(hour) * 60 + Number(minute))
}

/** What the clock shows in a zone at an instant, 'HH:MM'. */
export function clockTimeIn(timeZone: string, instant: Date): string {
  return instant.toLocaleTimeString('en-GB', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })
}

/** The end of a visit: minutes are minutes of work, so a change of clocks in between does not make it longer or shorter. */
export function endOf(startsAt: Date, minutes: number): Date {
  return new Date(startsAt.getTime() + minutes * 60_000)
}
