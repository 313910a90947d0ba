import type { DaySheet, SheetDrive, SheetFit, SheetVisit } from '@almanac/contract/day-sheets'
import { freeGaps } from '@almanac/service-rules/day-sheets/free-gaps'

/** One line of the open sheet, down the clock: a visit, the drive to it, a break, or a free stretch with the jobs that would fit into it. */
export type SheetLine =
  | { kind: 'visit'; key: string; at: number; visit: SheetVisit; outside: boolean }
  | { kind: 'drive'; key: string; at: number; drive: SheetDrive; to: string; what: 'out' | 'between' | 'home'; short: number }
  | { kind: 'break'; key: string; at: number; endsAt: number; fits: boolean }
  | { kind: 'free'; key: string; at: number; endsAt: number; minutes: number; fits: SheetFit[] }

const stretch = (one: { startsAt: string; endsAt: string }) => ({ startMs: Date.parse(one.startsAt), endMs: Date.parse(one.endsAt) })

/** The lines of a sheet in clock order. */
export function sheetLines(sheet: DaySheet, fits: readonly SheetFit[]): SheetLine[] {
  const hours = stretch(sheet)
  const visits = sheet.visits.map((visit): SheetLine => {
    const { startMs, endMs } = stretch(visit)
    return { kind: 'visit', key: visit.id, at: startMs, visit, outside: startMs < hours.startMs || endMs > hours.endMs }
  })
  const drives = sheet.drives.map((drive, n): SheetLine => driveLine(sheet, drive, n))
  const breaks = sheet.breaks.map((one): SheetLine => {
    const { startMs, endMs } = stretch(one)
    return { kind: 'break', key: `break-${startMs}`, at: startMs, endsAt: endMs, fits: one.fits }
  })
  const free = freeGaps(hours, takenOf(sheet)).map(({ startMs, endMs }): SheetLine => {
    const here = fits.filter((fit) => Date.parse(fit.freeUntil) === endMs)
    return { kind: 'free', key: `free-${endMs}`, at: startMs, endsAt: endMs, minutes: (endMs - startMs) / 60_000, fits: here }
  })
  return [...visits, ...free, ...breaks, ...drives].sort((a, b) => a.at - b.at || ORDER[a.kind] - ORDER[b.kind])
}

/** At the same minute: the break, what is free, then the drive, then the visit. */
const ORDER = { break: 0, free: 1, drive: 2, visit: 3 }

/** What visits take, and breaks that have their room. */
const takenOf = (sheet: DaySheet) => [...sheet.visits.map(stretch), ...sheet.breaks.filter((one) => one.fits).map(stretch)]

/**
 * The drive before visit `n`, or home after the last. `short` is how many minutes of it there is no time for: between two visits, before the crew's day begins,
 * or after it ends; 0 where it fits. Hours begin and end where the crew starts, as they do for plans and places.
 */
function driveLine(sheet: DaySheet, drive: SheetDrive, n: number): SheetLine {
  const [before, next] = [sheet.visits[n - 1], sheet.visits[n]]
  const from = Date.parse(before ? before.endsAt : sheet.startsAt)
  const until = Date.parse(next ? next.startsAt : sheet.endsAt)
  // A visit that lies outside the hours itself is told as such.
  const room = Math.max(0, (until - from) / 60_000)
  const isHours = (!before && until < from) || (!next && until < from)
  const short = isHours ? 0 : Math.max(0, (drive.minutes ?? 0) - room)
  const what = before ? (next ? 'between' : 'home') : 'out'
  const to = next?.siteLabel ?? 'the yard'
  return { kind: 'drive', key: `drive-${n}`, at: next ? until : from, drive, to, what, short: Math.ceil(short) }
}

/** Minutes booked on a sheet, and those free within its hours once its drives are taken off. */
export function sheetMinutes(sheet: DaySheet): { booked: number; free: number } {
  const sum = (all: { startMs: number; endMs: number }[]) => all.reduce((total, one) => total + (one.endMs - one.startMs) / 60_000, 0)
  const driving = sheet.drives.reduce((total, drive) => total + (drive.minutes ?? 0), 0)
  return { booked: sum(sheet.visits.map(stretch)), free: Math.max(0, sum(freeGaps(stretch(sheet), takenOf(sheet))) - driving) }
}
