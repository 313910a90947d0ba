import type { PlacesAsked } from '@almanac/contract/job-places'
import type { Tx } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type Built, buildProblem } from '@almanac/dispatch/propose/build-problem'
import { explainNoFit } from '@almanac/dispatch/slots/explain-no-fit'
import { latestStart } from '@almanac/dispatch/slots/latest-start'
import { rankSlots } from '@almanac/dispatch/slots/rank-slots'
import type { Slot } from '@almanac/dispatch/slots/slot'
import type { DayHalf } from '@almanac/records/day-plan'
import type { JobKind } from '@almanac/records/job-kind'
import { now } from '@almanac/runtime/clock'
import { AppError, notFound } from '@almanac/runtime/errors'
import { crewLacks } from '@almanac/service-rules/day-sheets/place-on-sheet'
import { waitCosts } from '@almanac/service-rules/jobs/wait-costs'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { clockOfMinute, dayIn, instantAt } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { withDrives } from './drive-table.ts'
import { pinVisits } from './pin-visits.ts'
import { readBoard } from './read-board.ts'
import { openTravelDesk } from './travel-desk.ts'

/** How far ahead places are looked for: so many days that have sheets, within so many days. */
const WORKING_DAYS = 10
const LOOK_AHEAD_DAYS = 30
const MOST_PLACES = 12

/** Visits are told on the five minutes: nobody is told to come at 10:23. */
const STEP = 5

const NOON = 720

/** The days ahead that have sheets, and the crews on them. */
async function sheetsAhead(tx: Tx, companyId: string, today: string) {
  const rows = await tx.crewDay.findMany({
    where: { companyId, day: { gte: dateOf(today), lt: dateOf(addDays(today, LOOK_AHEAD_DAYS)) } },
    select: { day: true, name: true },
    orderBy: { day: 'asc' },
  })
  const days = [...new Set(rows.map((one) => dayOf(one.day)))]
  return { days, crews: [...new Set(rows.map((one) => one.name))].sort((a, b) => a.localeCompare(b)) }
}

/** The first and the last minute at which a job may begin in a gap, on the five minutes where the gap still takes it then; null where the half of the day asked for has none. */
function startsOf(built: Built, jobId: string, slot: Slot, half: DayHalf | undefined): { from: number; last: number } | null {
  const latest = latestStart(built, jobId, slot)
  const first = half === 'afternoon' ? Math.max(slot.startMinute, NOON) : slot.startMinute
  const last = half === 'morning' ? Math.min(latest, NOON - STEP) : latest
  if (first > last) return null
  const from = Math.ceil(first / STEP) * STEP
  return { from: from <= last ? from : first, last: Math.max(from <= last ? from : first, Math.floor(last / STEP) * STEP) }
}

/**
 * Where a job would go over the sheets of the next ten working days, or of the one day asked for, cheapest first: added driving, overtime, days past its window, and what a day of
 * waiting costs an emergency or a repair. All other visits stay at their times. For each sheet that has no place for it, the reason and what would free one.
 */
export async function bestPlaces(scope: Pick<Scope, 'companyId'>, asked: PlacesAsked) {
  const { companyId } = scope
  const { jobId, half, crewName } = asked
  const at = now()
  const read = await inCompany(scope, async (tx) => {
    const job = await tx.job.findUnique({
      where: { companyId_id: { companyId, id: jobId } },
      include: { site: { select: { label: true } } },
    })
    if (!job) throw notFound('job')
    const { timeZone } = await companyFacts(tx, companyId)
    const today = dayIn(timeZone, at)
    const ahead = await sheetsAhead(tx, companyId, today)
    const fromDay = asked.day && asked.day > today ? asked.day : today
    const untilDay = asked.day ? fromDay : (ahead.days[WORKING_DAYS - 1] ?? ahead.days.at(-1) ?? today)
    const draft = await readBoard(tx, companyId, { fromDay, untilDay, at }, { jobId })
    return { job, timeZone, fromDay, untilDay, draft, ...ahead }
  })
  const { job, draft, timeZone, fromDay, untilDay, days, crews } = read
  const { rows } = draft
  // A job that has its visit is moved, so its own time counts as free.
  const visit = rows.sheets.flatMap((sheet) => sheet.visits).find((one) => one.jobId === jobId && one.state === 'booked')
  const onBoard = visit && draft.board.jobs.some((one) => one.id === visit.id) ? visit.id : jobId
  // What is only held for its customer is no visit to stand beside: it falls away with the booking.
  const held = new Set(
    rows.sheets.flatMap((sheet) => sheet.visits.filter((one) => one.jobId === jobId && one.state === 'offered')).map((one) => one.id),
  )
  const jobs = draft.board.jobs.filter((one) => (one.id === onBoard || one.id !== jobId) && !held.has(one.id))
  const sheets = draft.board.sheets.map((sheet) => ({ ...sheet, visits: sheet.visits.filter((one) => !held.has(one.jobId)) }))
  const board = await withDrives({ ...draft, board: { ...draft.board, jobs, sheets } }, await openTravelDesk(scope, timeZone))
  const built = buildProblem(pinVisits(board, onBoard), { planUnknown: true })
  if ('faults' in built) throw new AppError('conflict', `${built.faults.join(' ')} Nothing was changed.`)
  const ranked = rankSlots(built, onBoard)
  const slots = 'slots' in ranked ? ranked.slots : []
  const names = new Map(rows.sheets.map((sheet) => [sheet.id, sheet.name]))
  const labels = new Map([
    ...rows.sheets.flatMap((one) => one.visits.map((v) => [v.siteId, v.siteLabel] as const)),
    [job.siteId, job.site.label] as const,
  ])
  const named = (text: string) => text.replace(/«([0-9a-f-]{36})»/g, (whole, id: string) => names.get(id) ?? labels.get(id) ?? whole)
  const wants = { kind: job.kind as JobKind, minutes: job.minutes, crewSize: job.crewSize, needsVehicle: job.needsVehicle }
  const lacks = new Map(
    rows.sheets.map((sheet) => [sheet.id, crewLacks(wants, { people: sheet.members.length, hasVehicle: sheet.vehicle !== null })]),
  )
  const isAsked = (id: string) => !crewName || names.get(id) === crewName
  const places = slots
    .filter((slot) => !lacks.get(slot.sheetId) && isAsked(slot.sheetId))
    .flatMap((slot) => {
      const sheet = rows.sheets.find((one) => one.id === slot.sheetId)
      const starts = startsOf(built, onBoard, slot, half)
      if (!sheet || !starts || starts.last >= 1440) return []
      const start = starts.from
      const startsAt = instantAt(timeZone, slot.date, clockOfMinute(start))
      return [
        {
          ...{ crewDayId: slot.sheetId, day: slot.date, crewName: sheet.name, people: sheet.members.map((member) => member.name) },
          ...{ at: clockOfMinute(start), lastAt: clockOfMinute(starts.last), startsAt: startsAt.toISOString() },
          endsAt: new Date(startsAt.getTime() + job.minutes * 60_000).toISOString(),
          addedDriveMinutes: slot.addedDriveMinutes === null ? null : Math.max(0, Math.round(slot.addedDriveMinutes)),
          words: costWords(slot, wants.kind) ?? (slot.date < (dayOf(job.dueEarliest) ?? '') ? 'before its due window' : null),
        },
      ]
    })
    .slice(0, MOST_PLACES)
  const having = new Set(slots.map((slot) => slot.sheetId))
  const unfit = rows.sheets
    .filter((sheet) => isAsked(sheet.id) && (!having.has(sheet.id) || lacks.get(sheet.id)))
    .map((sheet) => ({
      ...{ crewDayId: sheet.id, day: sheet.day, crewName: sheet.name },
      reason: lacks.get(sheet.id) ?? named(reasonOn(built, onBoard, sheet.id)),
    }))
  return { fromDay, untilDay, days, crews, places, unfit }
}

function reasonOn(built: Parameters<typeof explainNoFit>[0], jobId: string, sheetId: string): string {
  const known = 'board' in built ? built.board.sheets : built.sheets
  if (!known.some((sheet) => sheet.id === sheetId)) return 'Its day is over, or nobody is on it.'
  return explainNoFit(built, jobId, { sheetId }) ?? 'Would fit, but costs more than the places above.'
}

/** What a place costs beyond its driving, in a few words; null where it costs nothing. */
function costWords({ addedOvertimeMinutes, addedInHandMinutes, lateDays, parts }: Slot, kind: JobKind): string | null {
  const words = []
  const days = lateDays === 1 ? 'a day' : `${lateDays} days`
  const wait = waitCosts[kind]
  if (addedOvertimeMinutes >= 1) words.push(`${Math.round(addedOvertimeMinutes)} min overtime`)
  if (addedInHandMinutes >= 1) words.push(`uses ${Math.round(addedInHandMinutes)} min of the time in hand`)
  if (parts.reserve > 1) words.push('ends late more than 1 day in 10')
  if (lateDays > 0) words.push(wait ? `${days} of waiting: ${wait.because}` : `${days} past its window`)
  return words.length > 0 ? words.join(', ') : null
}
