import * as calendar from '@almanac/units/calendar/calendar-day'

/** The day so many days after (or before) a day, rounded to whole days. */
export const addDays = (day: string, days: number) => calendar.addDays(day, Math.round(days))
export const asDate = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`))
export const earlier = (a: string, b: string) => (a < b ? a : b)
