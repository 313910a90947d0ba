import type { DaySheet, SheetFit, SheetVisit } from '@almanac/contract/day-sheets'
import { freeGaps } from '@almanac/service-rules/day-sheets/free-gaps'

/** One line of the open sheet, down the clock: a visit, or a free stretch with the jobs that would fit into it. */
export type SheetLine =
  | { kind: 'visit'; key: string; at: number; visit: SheetVisit; outside: boolean }
  | { kind: 'free'; key: string; at: number; endsAt: number; minutes: number; fits: SheetFit[] }

const stretch = (one: { startsAt: string; endsAt: string }) => ({ startMs: Date.parse(one.startsAt), endMs: Date.parse(one.endsAt) })

/** The lines of a sheet in clock order. */
export function sheetLines(sheet: DaySheet, fits: readonly SheetFit[]): SheetLine[] {
  const hours = stretch(sheet)
  const visits = sheet.visits.map((visit): SheetLine => {
    const { startMs, endMs } = stretch(visit)
    return { kind: 'visit', key: visit.id, at: startMs, visit, outside: startMs < hours.startMs || endMs > hours.endMs }
  })
  const free = freeGaps(hours, sheet.visits.map(stretch)).map(({ startMs, endMs }): SheetLine => {
    const here = fits.filter((fit) => Date.parse(fit.freeUntil) === endMs)
    return { kind: 'free', key: `free-${endMs}`, at: startMs, endsAt: endMs, minutes: (endMs - startMs) / 60_000, fits: here }
  })
  return [...visits, ...free].sort((a, b) => a.at - b.at)
}

/** Minutes booked and free on a sheet, within its hours for what is free. */
export function sheetMinutes(sheet: DaySheet): { booked: number; free: number } {
  const taken = sheet.visits.map(stretch)
  const sum = (all: { startMs: number; endMs: number }[]) => all.reduce((total, one) => total + (one.endMs - one.startMs) / 60_000, 0)
  return { booked: sum(taken), free: sum(freeGaps(stretch(sheet), taken)) }
}
