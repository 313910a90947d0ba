import type { WeekAsked, WeekOfTowns, WeekPlace, WeekSheet } from '@almanac/contract/week'
import { dateOf } from '@almanac/database/days'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { type SheetRow, sheetRows } from '@almanac/database/read/day-sheet-rows'
import type { PlanBoardRows } from '@almanac/database/read/plan-board'
import { readTownSpellings } from '@almanac/database/read/town-spellings'
import { readTowns, readWaitingIn, readWaitingJob } from '@almanac/database/read/week-towns'
import { type Built, buildProblem } from '@almanac/dispatch/propose/build-problem'
import { latestStart } from '@almanac/dispatch/slots/latest-start'
import { rankSlots } from '@almanac/dispatch/slots/rank-slots'
import type { JobKind } from '@almanac/records/job-kind'
import { now } from '@almanac/runtime/clock'
import { AppError } from '@almanac/runtime/errors'
import { crewLacks } from '@almanac/service-rules/day-sheets/place-on-sheet'
import { jobKindFacts } from '@almanac/service-rules/jobs/job-kinds'
import { addDays, weekdayOf } from '@almanac/units/calendar/calendar-day'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { placeOfSite } from '../shared/place-of-site.ts'
import { wallMinute } from './board-times.ts'
import { withDrives } from './drive-table.ts'
import { pinVisits } from './pin-visits.ts'
import { readBoard } from './read-board.ts'
import { openTravelDesk, pointOf, workOutDrives } from './travel-desk.ts'
import { visitLengths } from './visit-lengths.ts'

/** A crew that has to drive further for it is not near: its gap is better kept for its own end of the area. */
const NEAR_MINUTES = 30
const MOST_TOWNS = 14
/** Nobody is told to come at 10:23. */
const STEP = 5
const WORKDAYS = 5
const FIRST_DAY = '1900-01-01'

type Asked = { people: number; minutes: number; kind: JobKind }
type Town = Awaited<ReturnType<typeof readTowns>>[number]

/** On a board, where jobs, the yard and people's homes have names too. */
const boardId = (town: string) => `town ${town}`

/** A job nobody has: the work asked about, in the middle of a town, at any time. */
const imagined = (town: Town, { kind, minutes, people }: Asked): PlanBoardRows['waiting'][number] => ({
  ...{ id: boardId(town.town), version: 1, kind, minutes, crewSize: people, valveCardIds: [], dueEarliest: null, dueLatest: null },
  ...{ siteLabel: town.town, town: town.town, siteId: boardId(town.town), turn: null, bed: null, chance3Months: null },
  coordinates: { latitude: town.latitude, longitude: town.longitude, postcode: town.postcode },
  siteHours: { weekdays: [], from: null, until: null },
})

/** The gaps that take the work in a town, the soonest first: inside working hours, with every drive, and all other visits at their times. */
function placesIn(built: Built, town: string, asked: Asked, sheets: ReadonlyMap<string, SheetRow>): WeekPlace[] {
  const ranked = rankSlots(built, boardId(town))
  if (!('slots' in ranked)) return []
  return ranked.slots
    .flatMap((slot) => {
      const sheet = sheets.get(slot.sheetId)
      if (!sheet || slot.addedDriveMinutes === null || slot.addedDriveMinutes > NEAR_MINUTES) return []
      if (slot.addedOvertimeMinutes > 0 || slot.addedInHandMinutes > 0 || slot.parts.reserve > 0) return []
      if (crewLacks({ ...asked, crewSize: asked.people }, { people: sheet.members.length, hasVehicle: sheet.vehicle !== null })) return []
      const lastStart = Math.floor(latestStart(built, boardId(town), slot) / STEP) * STEP
      const from = Math.ceil(slot.startMinute / STEP) * STEP
      if (from > lastStart) return []
      return [
        {
          ...{ crewDayId: sheet.id, day: slot.date, crewName: sheet.name, from, lastStart },
          addedDriveMinutes: Math.max(0, Math.round(slot.addedDriveMinutes)),
        },
      ]
    })
    .sort((a, b) => a.day.localeCompare(b.day) || a.from - b.from)
}

function sheetOf(sheet: SheetRow, timeZone: string): WeekSheet {
  const wall = (instant: string) => wallMinute(timeZone, sheet.day, new Date(instant))
  return {
    ...{ crewDayId: sheet.id, day: sheet.day, crewName: sheet.name, people: sheet.members.map((one) => one.name) },
    hours: { from: wall(sheet.startsAt), until: wall(sheet.endsAt) },
    visits: sheet.visits.map((visit) => ({
      ...{ from: wall(visit.startsAt), until: wall(visit.endsAt) },
      held: visit.state === 'offered',
      promised:
        visit.state !== 'offered' && visit.arriveFrom && visit.arriveUntil
          ? { from: wall(visit.arriveFrom), until: wall(visit.arriveUntil) }
          : null,
    })),
  }
}

/** The towns that have work, a visit or are asked about, as many as a page holds: those with most to do stay, those without anything are only named. */
function shown(towns: readonly Town[], visited: ReadonlySet<string>, asked: string | null): Town[] {
  const work = ({ town, waiting, due }: Town) => (town === asked ? 1e6 : 0) + (visited.has(town) ? 1e3 : 0) + waiting * 10 + due
  return towns
    .filter((one) => work(one) > 0)
    .sort((a, b) => work(b) - work(a) || a.town.localeCompare(b.town))
    .slice(0, MOST_TOWNS)
}

/** When a crew could be in a town for some work, town by town over one week, beside what waits there and when crews are there anyway. */
export async function weekOfTowns(scope: Pick<Scope, 'companyId'>, input: WeekAsked): Promise<WeekOfTowns> {
  const { companyId } = scope
  const at = now()
  // A week begins before its day: the first days that can be written have none.
  if (input.day < FIRST_DAY) throw new AppError('invalid', 'This day is too long ago: choose one after 1900. Nothing was changed.')
  const monday = addDays(input.day, 1 - weekdayOf(input.day))
  const sunday = addDays(monday, 6)
  const read = await inCompany(scope, async (tx) => {
    const { timeZone } = await companyFacts(tx, companyId)
    const today = dayIn(timeZone, at)
    const job = input.jobId ? await readWaitingJob(tx, companyId, input.jobId) : null
    const kind = input.kind ?? job?.kind ?? 'rebed'
    const own = job?.kind === kind ? job : null
    const lengthOf = await visitLengths(tx, companyId, at, kind)
    const asked = {
      ...{ kind, people: input.people ?? own?.people ?? jobKindFacts[kind].usualCrew },
      minutes: input.minutes ?? own?.minutes ?? lengthOf(kind, null).middle,
    }
    const rows = await sheetRows(tx, companyId, { day: { gte: dateOf(monday), lte: dateOf(sunday) } })
    const spellings = await readTownSpellings(tx, companyId)
    const towns = await readTowns(tx, companyId, today, spellings)
    const townOf = (written: string | null | undefined) => (written && spellings.get(written)) ?? written ?? null
    const most = [...towns].sort((a, b) => b.waiting - a.waiting || b.due - a.due || a.town.localeCompare(b.town))[0]
    const town = towns.find((one) => one.town === townOf(input.town ?? job?.town))?.town ?? most?.town ?? null
    const visited = new Set(rows.flatMap((sheet) => sheet.visits.flatMap((visit) => townOf(visit.town) ?? [])))
    const on = shown(towns, visited, town)
    const fromDay = today > monday ? today : monday
    const draft =
      fromDay <= sunday
        ? await readBoard(tx, companyId, { fromDay, untilDay: sunday, at }, { asked: on.map((one) => imagined(one, asked)) })
        : null
    const inTown = town
      ? await readWaitingIn(
          tx,
          companyId,
          [...spellings].flatMap(([written, spelt]) => (spelt === town ? [written] : [])),
        )
      : []
    // The job in hand stands first, wherever it would come.
    const waiting = job ? [job, ...inTown.filter((one) => one.jobId !== job.jobId)] : inTown
    return { timeZone, today, asked, rows, towns, townOf, town, on, draft, waiting: waiting.map(({ town: _, ...one }) => one) }
  })
  const { timeZone, today, asked, rows, on, town, draft, waiting } = read
  const desk = await openTravelDesk(scope, timeZone)
  const built = draft ? buildProblem(pinVisits(await withDrives(draft, desk), ''), { planUnknown: true }) : null
  if (built && 'faults' in built) throw new AppError('conflict', `${built.faults.join(' ')} Nothing was changed.`)
  const middles = on.map((one) => placeOfSite(one, timeZone))
  const drives = await workOutDrives(
    desk,
    middles.map((to) => ({ from: desk.yard, to: to && pointOf(to), at })),
  )
  const sheets = new Map(rows.map((sheet) => [sheet.id, sheet]))
  const all = rows.map((sheet) => ({ ...sheetOf(sheet, timeZone), towns: sheet.visits.map((visit) => read.townOf(visit.town)) }))
  const rowsOfTowns = on.map((one, n) => ({
    ...{ town: one.town, waiting: one.waiting, due: one.due, driveMinutes: rounded(drives[n]?.minutes ?? null) },
    visits: all.flatMap(({ day, visits, towns }) =>
      visits.flatMap(({ from, until, held }, i) => (towns[i] === one.town ? [{ day, from, until, held }] : [])),
    ),
    places: built ? placesIn(built, one.town, asked, sheets) : [],
  }))
  const days = Array.from({ length: 7 }, (_, n) => addDays(monday, n)).filter(
    (day, n) => n < WORKDAYS || all.some((sheet) => sheet.day === day),
  )
  return {
    ...{ days, today, ...asked, town, waiting },
    towns: rowsOfTowns.sort((a, b) => (a.driveMinutes ?? 1e6) - (b.driveMinutes ?? 1e6) || a.town.localeCompare(b.town)),
    otherTowns: read.towns.flatMap((one) => (on.includes(one) ? [] : [one.town])).sort((a, b) => a.localeCompare(b)),
    sheets: all.map(({ towns: _, ...sheet }) => sheet),
  }
}

const rounded = (minutes: number | null) => (minutes === null ? null : Math.round(minutes))
