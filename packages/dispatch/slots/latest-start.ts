import type { RoutedVisit } from '../problem/problem.ts'
import { dayIndex, toTicks } from '../propose/board-clock.ts'
import type { Built } from '../propose/build-problem.ts'
import { currentSheet } from './current-sheet.ts'
import type { Slot } from './slot.ts'
import { timeSheet, withVisitIn } from './time-sheet.ts'

const END_OF_DAY = 1440

/**
 * The last minute on the wall clock at which a job may begin in the gap that a slot names, with the drives before and after it, all others in time, and no more
 * overtime than the slot has. At least the slot's own start. What fits at one minute fits at each earlier one down to that start, so it is halved towards.
 */
export function latestStart(built: Built, jobId: string, slot: Slot): number {
  const { problem, clock } = built
  const r = built.sheetOf.get(slot.sheetId)
  const v = built.visitOf.get(jobId)
  if (r === undefined || v === undefined) return slot.startMinute
  const crew = problem.crewDays[r] as Built['problem']['crewDays'][number]
  const visit = problem.visits[v] as RoutedVisit
  const others = (built.present[r] ?? []).filter((other) => other !== v).map((other) => problem.visits[other] as RoutedVisit)
  const standing = currentSheet(problem, crew, others)
  const d = dayIndex(clock, slot.date)
  const windows = visit.promised ? [visit.promised.start] : visit.windows
  const endOf = (from: number): number | null => {
    const later = windows.flatMap((one) => (one.to >= from ? [{ from: Math.max(one.from, from), to: one.to }] : []))
    const { promised: _, ...free } = visit
    const order = withVisitIn(standing.visits, { ...free, windows: later })[slot.position]
    const timed = order && later.length > 0 ? timeSheet(problem, standing.crew, order) : null
    return timed?.fits ? timed.day.end : null
  }
  const mostEnd = Math.max(crew.shift.to, endOf(toTicks(clock, d, slot.startMinute)) ?? 0)
  const fits = (minute: number) => {
    const end = endOf(toTicks(clock, d, minute))
    return end !== null && end <= mostEnd
  }
  let [good, bad] = [slot.startMinute, Math.max(slot.startMinute + 1, END_OF_DAY)]
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2)
    if (fits(middle)) good = middle
    else bad = middle
  }
  return good
}
