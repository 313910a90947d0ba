import type { RoutedVisit } from '../problem/problem.ts'
import type { Board, Sheet } from '../propose/board.ts'
import { dayIndex, toWall } from '../propose/board-clock.ts'
import { type Built, buildProblem, shiftEnd } from '../propose/build-problem.ts'
import { type Gap, gapsFor, plainObstacle, startAt } from './obstacle.ts'
import { saySlot } from './say-slot.ts'
import type { Slot } from './slot.ts'
import { type TimedSheet, timeSheet } from './time-sheet.ts'

/** A wait costs no money by itself; between slots of nearly one price the one with less of it comes first. Minor units a minute. */
const WAIT_PRICE = 1

/**
 * Every place where a job can go with all others in their order, cheapest first; empty when there is none (`explainNoFit` says why). A job that stands on a sheet is
 * tried everywhere as if it stood nowhere. `most` cuts the list, `onePerSheet` keeps each sheet's best. Answers faults of the board as sentences.
 */
export function rankSlots(
  given: Board | Built,
  jobId: string,
  how: { most?: number; onePerSheet?: boolean } = {},
): { slots: Slot[]; notes: readonly string[] } | { faults: string[] } {
  const built = 'problem' in given ? given : buildProblem(given, { planUnknown: true })
  if ('faults' in built) return built
  const v = built.visitOf.get(jobId)
  if (v === undefined) return { faults: ['That job is outside the days planned.'] }
  const visit = built.problem.visits[v] as RoutedVisit
  const slots = built.board.sheets.flatMap((sheet, r) => sheetSlots(built, sheet, r, v, visit, how.onePerSheet === true))
  slots.sort((a, b) => rank(a) - rank(b) || a.date.localeCompare(b.date) || a.startMinute - b.startMinute)
  return { slots: slots.slice(0, how.most ?? slots.length), notes: built.notes }
}

function rank(slot: Slot): number {
  return slot.price + slot.addedWaitMinutes * WAIT_PRICE
}

function sheetSlots(built: Built, sheet: Sheet, r: number, v: number, visit: RoutedVisit, one: boolean): Slot[] {
  const { problem, present } = built
  const crew = problem.crewDays[r] as Built['problem']['crewDays'][number]
  if (plainObstacle(crew, r, visit) !== null) return []
  const others = (present[r] ?? []).filter((other) => other !== v).map((other) => problem.visits[other] as RoutedVisit)
  const before = timeSheet(problem, crew, others)
  const gaps = gapsFor(problem, crew, others, visit)
  const slots = gaps.map((gap) => toSlot(built, sheet, r, visit, before, gap, others.length === 0))
  if (!one || slots.length < 2) return slots
  return [slots.reduce((best, slot) => (rank(slot) < rank(best) ? slot : best))]
}

function toSlot(built: Built, sheet: Sheet, r: number, visit: RoutedVisit, before: TimedSheet, gap: Gap, wasEmpty: boolean): Slot {
  const { clock, problem, unknownDrive } = built
  const crew = problem.crewDays[r] as Built['problem']['crewDays'][number]
  const d = dayIndex(clock, sheet.date)
  const { timed } = gap
  const start = startAt(gap)
  const windows = visit.promised ? [visit.promised.start] : visit.windows
  const open = windows.find((window) => window.from <= start && window.to >= start)
  const beyond = (limit: number) => (Math.max(0, timed.day.end - limit) - Math.max(0, (wasEmpty ? 0 : before.day.end) - limit)) / 60
  const overtime = beyond(shiftEnd(built, r))
  const lateDays = visit.dueDay === undefined ? 0 : Math.max(0, crew.day - visit.dueDay)
  const parts = {
    driving: timed.drivePrice - before.drivePrice,
    overtime: timed.overtimePrice - before.overtimePrice,
    reserve: timed.reservePrice - before.reservePrice,
    lateness: lateDays * (visit.latePricePerDay ?? 0),
    sending: wasEmpty ? crew.sendPrice : 0,
    moving: visit.dislikes?.find((dislike) => dislike.crewDay === r)?.price ?? 0,
  }
  const unknown = unknownDrive.has(visit.id)
  const slot = {
    sheetId: sheet.id,
    date: sheet.date,
    position: gap.position,
    startMinute: toWall(clock, d, start),
    endMinute: toWall(clock, d, start + visit.serviceTicks),
    addedDriveMinutes: unknown ? null : (timed.driveTicks - before.driveTicks) / 60,
    addedMiles: unknown ? null : timed.distance - before.distance,
    addedWaitMinutes: Math.max(0, timed.waitTicks - before.waitTicks) / 60,
    addedOvertimeMinutes: overtime,
    addedInHandMinutes: beyond(crew.shift.to) - overtime,
    lateDays,
    windowSlackMinutes: Math.max(0, Math.min(open?.to ?? start, crew.latestEnd) - start) / 60,
    fullest: timed.fullest,
    parts,
    price: parts.driving + parts.overtime + parts.reserve + parts.lateness + parts.sending + parts.moving,
  }
  return { ...slot, sentence: saySlot(slot, sheet.label, built.board) }
}
