const write = (day: string): string => day.split('-').reverse().join('.')

/** A day formatted first, and one that somebody typed. */
export const since = (fromDay: string): string => `due from ${write(fromDay)}`
export const noDay = (day: string): string => `“${day}” is no day`
export const key = (day: string): string => `${day}T00:00:00Z`
