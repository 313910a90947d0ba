const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday']
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December']

const parts = (day: string) => {
  const date = new Date(`${day}T00:00:00Z`)
  return {
    weekday: WEEKDAYS[date.getUTCDay()] ?? '',
    month: MONTHS[date.getUTCMonth()] ?? '',
    date: date.getUTCDate(),
    year: date.getUTCFullYear(),
  }
}

/** "Thursday 3 December", with the year when it is not the one of `today`. */
export function dayTitle(day: string, today: string): string {
  const { weekday, month, date, year } = parts(day)
  return `${weekday} ${date} ${month}${day.slice(0, 4) === today.slice(0, 4) ? '' : ` ${year}`}`
}

/** "Thu 3 Dec". */
export function shortDay(day: string): string {
  const { weekday, month, date } = parts(day)
  return `${weekday.slice(0, 3)} ${date} ${month.slice(0, 3)}`
}

/** "3 Dec 2026". */
export function dayWords(day: string): string {
  const { month, date, year } = parts(day)
  return `${date} ${month.slice(0, 3)} ${year}`
}

/** What the clock shows in a zone, "08:05". */
export function clockIn(timeZone: string, instant: string): string {
  return new Date(instant).toLocaleTimeString('en-GB', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' })
}

/** "2 h 20", "45 min", "3 h". */
export function durationWords(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), Math.round(minutes % 60)]
  if (hours === 0) return `${rest} min`
  return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')}`
}
