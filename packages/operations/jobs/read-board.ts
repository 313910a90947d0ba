import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { type PlanBoardRows, readPlanBoard } from '@almanac/database/read/plan-board'
import type { Board, BoardDay, BoardJob, Sheet } from '@almanac/dispatch/propose/board'
import type { TravelPlace } from '@almanac/dispatch/travel/travel-table'
import type { JobKind } from '@almanac/records/job-kind'
import { type SiteHours, siteHoursOn, takesAnyTime } from '@almanac/service-rules/day-sheets/site-hours'
import { firstDayInTurn, outOfTurn } from '@almanac/service-rules/jobs/job-turns'
import { spreadOf } from '@almanac/service-rules/jobs/learn-durations'
import { waitCosts } from '@almanac/service-rules/jobs/wait-costs'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import type { AmountDisplay } from '@almanac/units/display'
import { companyFacts } from '../shared/company-facts.ts'
import { readCrewBook } from '../shared/crew-book.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { placeOfSite } from '../shared/place-of-site.ts'
import { boardDays, wallMinute } from './board-times.ts'
import { type CrewOnDay, crewOnDay } from './crew-on-day.ts'
import { skillsOfCrew, skillsOfJob } from './job-skills.ts'
import { loadOfJob } from './load-of-job.ts'
import { openPartsDesk, type PartsDesk } from './parts-day.ts'
import { boardPrices, riskPerDay } from './plan-prices.ts'
import { pointOf } from './travel-desk.ts'
import { visitLengths } from './visit-lengths.ts'

/** A board without its drives, which are worked out outside the transaction. */
export type BoardDraft = { board: Omit<Board, 'travel' | 'rush'>; places: TravelPlace[]; timeZone: string }

/** Where crews start and end. */
export const YARD = 'yard'
/** Overtime that a plan may reckon with, minutes; priced, and shown. */
export const MOST_OVERTIME = 120
const END_OF_DAY = 1440
const NEVER = '9999-12-31'
/** A job that presses is left out of a plan only as if it waited so long. */
const LEAVE_OUT_DAYS = 60
/** Sites and crews stand on a stored board by id: names are put in when it is shown, so that a person can be erased. */
const token = (id: string) => `«${id}»`

type Row = PlanBoardRows['sheets'][number]
type Lengths = Awaited<ReturnType<typeof visitLengths>>
/** `lengths` where the firm plans by how much they vary. */
type Firm = { figures: FirmFigures; display: AmountDisplay; lengths: Lengths | null }

/** Where a crew with someone who takes the vehicle home starts and ends. */
export const homeOf = (personId: string) => `home ${personId}`

function sheetOf(row: Row, crew: CrewOnDay, timeZone: string, at: Date): Omit<Sheet, 'skills'> | null {
  const wall = (instant: string | Date) => wallMinute(timeZone, row.day, new Date(instant))
  const begun = row.visits.filter((visit) => new Date(visit.startsAt) <= at || visit.state === 'closed' || visit.state === 'under-way')
  const last = begun.at(-1)
  const now = dayIn(timeZone, at) === row.day ? wall(at) : 0
  const from = Math.max(wall(row.startsAt), last ? wall(last.endsAt) : 0, now, ...crew.hours.map((one) => one.from))
  const to = Math.min(wall(row.endsAt), ...crew.hours.map((one) => one.to))
  if (from >= to || crew.people.length === 0) return null
  const place = crew.home ? homeOf(crew.home.personId) : YARD
  const overtime = crew.people.flatMap((one) => one.overtimeMinorPerHour ?? [])
  return {
    id: row.id,
    label: token(row.id),
    date: row.day,
    people: crew.people.length,
    shift: { from, to },
    ...(crew.inHandMinutes > 0 ? { inHandMinutes: crew.inHandMinutes } : {}),
    latestEnd: to + MOST_OVERTIME,
    breaks: crew.breaks.filter((one) => one.to > from && one.from + one.minutes <= to),
    startPlace: last ? last.siteId : place,
    endPlace: place,
    capacity: crew.vehicle ? { ft3: crew.vehicle.volumeFt3, lb: crew.vehicle.weightLb } : { ft3: 0, lb: 0 },
    // Where all of them have a price of their own, the crew costs their average.
    ...(overtime.length === crew.people.length ? { overtimePerHour: overtime.reduce((a, b) => a + b, 0) / overtime.length } : {}),
    visits: row.visits.filter((visit) => !begun.includes(visit)).map((visit) => ({ jobId: visit.id, startMinute: wall(visit.startsAt) })),
  }
}

type Measured = { kind: string; bed: { diameterIn: number | null } | null }

/** How much the length of a visit varies, where the firm plans by that. */
function spreadOfJob({ kind, bed }: Measured, { lengths }: Firm): { spread?: number } {
  return lengths ? { spread: spreadOf(lengths(kind as JobKind, bed?.diameterIn ?? null)) } : {}
}

/** When a visit may begin for the site's sake, so that it ends in its hours too; no windows where any time will do. */
function siteWindows(hours: SiteHours, days: readonly BoardDay[], minutes: number): BoardJob['windows'] {
  if (takesAnyTime(hours)) return []
  const open = days.flatMap(({ date }) => {
    const on = siteHoursOn(hours, date)
    return on && on.until - minutes >= on.from ? [{ date, from: on.from, to: on.until - minutes }] : []
  })
  // A window beyond the board: none of these days will do.
  return open.length > 0 ? open : [{ date: NEVER, from: 0, to: 0 }]
}

/**
 * A visit on a sheet as the planner sees it: fixed where it is only offered, kept within its window where the customer was promised one. Any other may go to
 * another day, but not earlier on its own: somebody knows the time it was booked for, and an earlier one gains nothing.
 */
function visitJob(visit: Row['visits'][number], row: Row, days: readonly BoardDay[], timeZone: string, firm: Firm): BoardJob {
  const wall = (instant: string) => wallMinute(timeZone, row.day, new Date(instant))
  const start = wall(visit.startsAt)
  const promised =
    visit.state !== 'booked'
      ? { sheetId: row.id, from: start, to: start }
      : visit.arriveFrom && visit.arriveUntil
        ? { sheetId: row.id, from: wall(visit.arriveFrom), to: wall(visit.arriveUntil) }
        : undefined
  const minutes = (Date.parse(visit.endsAt) - Date.parse(visit.startsAt)) / 60_000
  const anyTime = days.map(({ date }) => ({ date, from: 0, to: END_OF_DAY }))
  const elsewhere = takesAnyTime(visit.siteHours) ? anyTime : siteWindows(visit.siteHours, days, minutes)
  return {
    ...{ id: visit.id, label: token(visit.siteId), place: visit.siteId, people: visit.crewSize, skills: skillsOfJob(visit, firm.figures) },
    windows: [...elsewhere.filter(({ date }) => date !== row.day), { date: row.day, from: start, to: END_OF_DAY }],
    minutes,
    ...spreadOfJob(visit, firm),
    ...loadOfJob(visit, firm),
    ...(promised ? { promised } : {}),
  }
}

function waitingJob(
  job: PlanBoardRows['waiting'][number],
  rows: PlanBoardRows,
  days: readonly BoardDay[],
  firm: Firm,
  parts: PartsDesk,
  today: string,
): BoardJob {
  const wished = dayOf(job.dueEarliest)
  const wait = waitCosts[job.kind as JobKind]
  // What presses is late from the day it was wished for, today at the earliest.
  const due = wait ? (wished !== null && wished > today ? wished : today) : dayOf(job.dueLatest)
  const late = parts.dayOf({ kind: job.kind, bed: job.bed })
  const first = job.turn && firstDayInTurn(job.turn)
  const turn = job.turn && first ? { day: first, because: outOfTurn(job.turn, '', firm.display) ?? '' } : null
  // Whichever comes last holds it up.
  const waits = [late, turn].reduce((last, one) => (one && one.day > (last?.day ?? wished ?? '') ? one : last), null)
  const earliest = waits?.day ?? wished
  return {
    ...{ id: job.id, label: token(job.siteId), place: job.siteId, minutes: job.minutes, people: job.crewSize },
    // What follows a visit without a day can stand on none.
    windows: job.turn && !first ? [{ date: NEVER, from: 0, to: 0 }] : siteWindows(job.siteHours, days, job.minutes),
    skills: skillsOfJob(job, firm.figures),
    ...spreadOfJob(job, firm),
    ...loadOfJob(job, firm),
    ...(earliest ? { earliest } : {}),
    ...(waits ? { earliestBecause: waits.because } : {}),
    ...(due ? { due, riskPerDay: wait?.minorPerDay ?? riskPerDay(job.chance3Months, rows.settings) } : {}),
    // Late is better than not at all.
    ...(wait ? { leaveOutPrice: wait.minorPerDay * LEAVE_OUT_DAYS } : {}),
  }
}

/** Who is left on the sheet of a mishap, and what they may do in the words that jobs ask by. */
export type CrewLeft = { people: number; skills: string[] }

/** Reads the sheets of some days as a board, with the waiting jobs, one of them alone, or jobs that are only asked about. The sheet of a mishap stands on it with everyone who was to work. What is past or under way on a day that has begun is left out of it. */
export async function readBoard(
  tx: Tx,
  companyId: string,
  days: { fromDay: string; untilDay: string; at: Date; mishap?: { sheetId: string; missingIds: readonly string[] } },
  only?: { jobId: string } | { asked: PlanBoardRows['waiting'] },
): Promise<BoardDraft & { rows: PlanBoardRows; left: CrewLeft }> {
  const { fromDay, untilDay, at } = days
  const found = await readPlanBoard(tx, companyId, days, only && 'jobId' in only ? only.jobId : undefined)
  const rows = only && 'asked' in only ? { ...found, waiting: only.asked } : found
  const { timeZone } = rows
  const lengths = rows.settings.dayFill === 'usual' ? null : await visitLengths(tx, companyId, at)
  const firm = { figures: await firmFigures(tx, companyId), display: await companyFacts(tx, companyId), lengths }
  const span = boardDays(timeZone, fromDay, untilDay)
  const today = dayIn(timeZone, at)
  const book = await readCrewBook(tx, companyId, fromDay < today ? fromDay : today)
  const parts = await openPartsDesk(tx, companyId, today, firm)
  const asking = [...rows.sheets.flatMap((row) => row.visits), ...rows.waiting]
  const kept = rows.sheets.flatMap((row) => {
    const crew = crewOnDay(book, row, row.id === days.mishap?.sheetId)
    const sheet = sheetOf(row, crew, timeZone, at)
    return sheet ? [{ row, home: crew.home, sheet: { ...sheet, skills: skillsOfCrew(crew.people, asking, firm.figures) } }] : []
  })
  const placed = kept.flatMap(({ row, sheet }) => {
    const on = new Set(sheet.visits.map((one) => one.jobId))
    return row.visits.filter((visit) => on.has(visit.id)).map((visit) => visitJob(visit, row, span, timeZone, firm))
  })
  const waiting = rows.waiting
    // Somebody who asks for one job wants its places, though it isn't due for years.
    .map((job) => (only && 'jobId' in only && (dayOf(job.dueEarliest) ?? '') > untilDay ? { ...job, dueEarliest: null } : job))
    .filter((job) => (dayOf(job.dueEarliest) ?? '') <= untilDay)
    .map((job) => waitingJob(job, rows, span, firm, parts, today))
  const coordinates = new Map(asking.map((one) => [one.siteId, placeOfSite(one.coordinates, timeZone)]))
  const yard = pointOf({ latitude: rows.settings.yardLatitude, longitude: rows.settings.yardLongitude })
  const homes = new Map(
    kept.flatMap(({ home }) => (home ? [[home.personId, { id: homeOf(home.personId), at: pointOf(home) }] as const] : [])),
  )
  const places = [
    { id: YARD, at: yard },
    ...homes.values(),
    ...[...coordinates].map(([id, place]) => ({ id, at: place && pointOf(place) })),
  ]
  const board = {
    locale: firm.display.locale,
    unitSystem: firm.display.unitSystem,
    days: span,
    sheets: kept.map((one) => one.sheet),
    jobs: [...placed, ...waiting],
    prices: boardPrices(rows.settings),
  }
  const broken = rows.sheets.find((row) => row.id === days.mishap?.sheetId)
  const members = broken?.members.filter((one) => !days.mishap?.missingIds.includes(one.colleagueId)) ?? []
  const left = broken ? crewOnDay(book, { ...broken, members }, true).people : []
  return { board, places, timeZone, rows, left: { people: left.length, skills: skillsOfCrew(left, asking, firm.figures) } }
}
