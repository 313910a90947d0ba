const DAY_MS = 86_400_000

/** The day so many days after (or before) a day, all 'YYYY-MM-DD'. */
export const addDays = (day: string, days: number) =>
  new Date(Date.parse(`${day}T00:00:00Z`) + Math.round(days) * DAY_MS).toISOString().slice(0, 10)
const daysBetween = (from: string, to: string) => (Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / DAY_MS
export const yearsBetween = (from: string, to: string) => daysBetween(from, to) / 365.25
export const asDate = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`))
/** Monday 1 … Sunday 7. */
export const weekday = (day: string) => new Date(`${day}T00:00:00Z`).getUTCDay() || 7
export const earlier = (a: string, b: string) => (a < b ? a : b)
