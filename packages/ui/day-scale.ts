import { dayNumber } from '@almanac/units/calendar/calendar-day'

/** Parts of a calendar day 'YYYY-MM-DD' or month 'YYYY-MM' (then day 1). Throws on anything else, for a wrong date must not draw a wrong picture. */
function dayParts(day: string): { year: number; month: number; day: number } {
  const found = /^(\d{4})-(\d{2})(?:-(\d{2}))?/.exec(day)
  const year = Number(found?.[1])
  const month = Number(found?.[2])
  if (!found || month < 1 || month > 12) throw new RangeError(`"${day}" is not a day written as YYYY-MM-DD.`)
  return { year, month, day: Number(found[3] ?? 1) }
}

/**
 * Where a day stands between `from` and `until`, 0 to 1. Days outside are held at the edge and reported, so that the drawing can show an
 * open end instead of a false one.
 */
export function dayShare(day: string, from: string, until: string): { share: number; outside: 'before' | 'after' | null } {
  const start = dayNumber(from)
  const span = dayNumber(until) - start
  if (span <= 0) throw new RangeError(`An axis must end after it begins: ${from} to ${until}.`)
  const raw = (dayNumber(day) - start) / span
  return { share: Math.min(1, Math.max(0, raw)), outside: raw < 0 ? 'before' : raw > 1 ? 'after' : null }
}

/** First days of years inside an axis, thinned so that at most `most` labels stand on it. */
export function yearTicks(from: string, until: string, most: number): { year: number; share: number }[] {
  const first = dayParts(from).year + (from.slice(5, 10) === '01-01' ? 0 : 1)
  const last = dayParts(until).year
  const step = [1, 2, 5, 10, 20, 50].find((s) => Math.floor((last - first) / s) + 1 <= most) ?? 100
  const ticks: { year: number; share: number }[] = []
  for (let year = Math.ceil(first / step) * step; year <= last; year += step)
    ticks.push({ year, share: dayShare(`${year}-01-01`, from, until).share })
  return ticks
}
