/** A calendar day of a `date` column as 'YYYY-MM-DD'. */
export function dayOf(date: Date): string
export function dayOf(date: Date | null): string | null
export function dayOf(date: Date | null): string | null {
  return date === null ? null : date.toISOString().slice(0, 10)
}

/** What a `date` column takes for a calendar day 'YYYY-MM-DD'. */
export function dateOf(day: string): Date
export function dateOf(day: string | null): Date | null
export function dateOf(day: string | null): Date | null {
  return day === null ? null : new Date(`${day}T00:00:00Z`)
}
