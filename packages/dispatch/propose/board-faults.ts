import { isIsoDay } from '@almanac/units/calendar/calendar-day'
import type { Board } from './board.ts'
import { sayDay } from './say.ts'

/** What on a board cannot be planned from, one sentence each. Sheets that are full or late are no fault; contradictions are. */
export function boardFaults(board: Board): string[] {
  const faults: string[] = []
  const { days, sheets, jobs, travel, prices } = board
  // A day that is none cannot be written otherwise than as it came.
  const say = (date: string): string => (isIsoDay(date) ? sayDay(date, board) : date)
  days.forEach((day, i) => {
    const before = days[i - 1]
    if (!isIsoDay(day.date)) faults.push(`"${day.date}" is no calendar day.`)
    if (before !== undefined && before.date >= day.date) faults.push(`${say(day.date)} does not come after ${say(before.date)}.`)
    if (day.minutesInDay !== 1440 - (day.clockChange?.byMinutes ?? 0)) {
      faults.push(`${say(day.date)} has ${day.minutesInDay} minutes, which its change of clocks does not explain.`)
    }
  })
  const places = new Set(travel.ids)
  const jobIds = new Set(jobs.map((job) => job.id))
  const sheetIds = new Set(sheets.map((sheet) => sheet.id))
  if (jobIds.size < jobs.length) faults.push('Two jobs have the same id.')
  if (sheetIds.size < sheets.length) faults.push('Two day sheets have the same id.')
  const seen = new Map<string, string>()
  for (const sheet of sheets) {
    if (!days.some((day) => day.date === sheet.date))
      faults.push(`The sheet of ${sheet.label} lies on ${say(sheet.date)}, outside the days looked at.`)
    if (!(sheet.shift.from < sheet.shift.to && sheet.latestEnd >= sheet.shift.to))
      faults.push(`The shift of ${sheet.label} on ${say(sheet.date)} ends before it begins.`)
    if (!(sheet.people >= 1)) faults.push(`Nobody is on the sheet of ${sheet.label} on ${say(sheet.date)}.`)
    for (const place of [sheet.startPlace, sheet.endPlace]) {
      if (!places.has(place)) faults.push(`${sheet.label} begins or ends at a place whose drives are not known.`)
    }
    for (const { jobId } of sheet.visits) {
      if (!jobIds.has(jobId)) faults.push(`${sheet.label}'s sheet of ${say(sheet.date)} lists a job that is not on the board.`)
      const other = seen.get(jobId)
      if (other !== undefined) faults.push(`A job is on two sheets: ${other} and ${sheet.label}.`)
      seen.set(jobId, sheet.label)
    }
  }
  for (const job of jobs) {
    if (!(job.minutes > 0)) faults.push(`${job.label} has no length; give it the minutes it takes.`)
    if (!(job.people >= 1)) faults.push(`${job.label} needs at least one person.`)
    const amounts = [job.out.ft3, job.out.lb, job.back.ft3, job.back.lb, job.riskPerDay ?? 0, job.leaveOutPrice ?? 0]
    if (amounts.some((amount) => !(amount >= 0))) faults.push(`${job.label} has a load or price that is no amount.`)
    if (job.windows.some((window) => !(window.from <= window.to))) faults.push(`${job.label} has a window that ends before it begins.`)
    for (const date of [job.earliest, job.due])
      if (date !== undefined && !isIsoDay(date)) faults.push(`${job.label}: "${date}" is no calendar day.`)
  }
  for (const [name, price] of Object.entries(prices)) if (!(price >= 0)) faults.push(`The price ${name} is ${price}; it must be 0 or more.`)
  return faults
}
