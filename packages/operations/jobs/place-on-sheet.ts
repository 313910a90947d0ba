import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import { lockRows } from '@almanac/database/sql/lock-rows'
import type { Unusual } from '@almanac/records/day-plan'
import type { JobKind } from '@almanac/records/job-kind'
import { AppError, notFound } from '@almanac/runtime/errors'
import { crewLacks } from '@almanac/service-rules/day-sheets/place-on-sheet'
import { dayIn, instantAt } from '@almanac/units/calendar/zone-clock'
import { type ClockDisplay, formatClock, formatClockTime } from '@almanac/units/format-clock'
import { formatNearDay } from '@almanac/units/format-day'
import { companyFacts } from '../shared/company-facts.ts'
import { endOf } from './end-of-visit.ts'
import type { PlaceWanted } from './lock-slot.ts'
import { type Following, planningWarnings } from './planning-warnings.ts'
import { keepsPromise } from './promises.ts'

/** Locks day sheets against a change of their people, in id order, and reads one of them. */
export async function lockSheet(tx: Tx, companyId: string, crewDayId: string, alsoId?: string) {
  const ids = [crewDayId, ...(alsoId ? [alsoId] : [])]
  await lockRows(tx, companyId, 'crew_day', ids, 'share')
  const sheet = await tx.crewDay.findUnique({
    where: { companyId_id: { companyId, id: crewDayId } },
    include: { members: { select: { colleagueId: true } } },
  })
  if (!sheet) throw notFound('day sheet')
  return sheet
}

export type LockedSheet = Awaited<ReturnType<typeof lockSheet>>

type Wish = {
  job: Following & { kind: string; minutes: number; crewSize: number; softenerId: string | null; bedId: string | null; siteId: string }
  sheet: LockedSheet
  at: string
  confirmed: readonly Unusual[]
  now: Date
  /** The visit that is moved: its own kit is there for it. */
  visitId?: string
}

/**
 * What a job at a time takes of a sheet. Refuses where the crew cannot do it, and asks to confirm what is allowed but unusual: a 409 whose
 * `detail.confirm` names it.
 */
export async function placeWanted(tx: Tx, companyId: string, { job, sheet, at, confirmed, now, visitId }: Wish): Promise<PlaceWanted> {
  const display = await companyFacts(tx, companyId)
  const { timeZone } = display
  const colleagueIds = sheet.members.map((member) => member.colleagueId)
  const wants = { kind: job.kind as JobKind, minutes: job.minutes, crewSize: job.crewSize }
  const lacks = crewLacks(wants, { people: colleagueIds.length, hasVehicle: sheet.vehicleId !== null })
  if (lacks) throw new AppError('conflict', `${lacks} Nothing was changed; choose another sheet or change this one’s crew.`, { lacks })
  const startsAt = instantAt(timeZone, dayOf(sheet.day), at)
  const endsAt = endOf(startsAt, job.minutes)
  const clock = (instant: Date) => formatClock(instant, display)
  if (startsAt < now && !confirmed.includes('past'))
    throw unusual(
      'past',
      `${formatNearDay(dayOf(sheet.day), display)}, ${formatClockTime(at, display)} has already passed. Nothing was changed. Book it there anyway?`,
    )
  if ((startsAt < sheet.startsAt || endsAt > sheet.endsAt) && !confirmed.includes('outside-hours'))
    throw unusual(
      'outside-hours',
      `The visit would last from ${clock(startsAt)} to ${clock(endsAt)}, but this crew works from ${clock(sheet.startsAt)} to ${clock(sheet.endsAt)}. Nothing was changed. Book it there anyway?`,
    )
  const wish = { job, sheet, timeZone, today: dayIn(timeZone, now), visitId, startsAt, endsAt }
  for (const { confirm, words } of await planningWarnings(tx, companyId, wish))
    if (!confirmed.includes(confirm)) throw unusual(confirm, `${words} Nothing was changed. Book it there anyway?`)
  return { companyId, display, colleagueIds, vehicleId: sheet.vehicleId, startsAt, endsAt }
}

type Window = { promisedBy: string | null; arriveFrom: Date | null; arriveUntil: Date | null }

/** "Thu, Dec 3 between 8:00 AM and 12:00 PM"; null where nothing was promised. */
function promisedWords({ promisedBy, arriveFrom, arriveUntil }: Window, display: ClockDisplay): string | null {
  if (!promisedBy || !arriveFrom || !arriveUntil) return null
  const when = formatNearDay(dayIn(display.timeZone, arriveFrom), display)
  return `${when} between ${formatClock(arriveFrom, display)} and ${formatClock(arriveUntil, display)}`
}

/** The customer was promised an arrival window: a move that leaves it has to be confirmed, since somebody must call them. */
export function refuseBrokenPromise(visit: Window, startsAt: Date, confirmed: readonly Unusual[], display: ClockDisplay): void {
  const told = promisedWords(visit, display)
  if (!told || confirmed.includes('promise') || keepsPromise(visit, startsAt)) return
  throw unusual('promise', `The customer was promised ${told}. Nothing was changed. Move anyway? They go on the list to call.`)
}

/** The same of a visit that comes off its sheet. */
export async function refuseLostPromise(tx: Tx, companyId: string, visit: Window, confirmed: readonly Unusual[]): Promise<void> {
  const told = promisedWords(visit, await companyFacts(tx, companyId))
  if (!told || confirmed.includes('promise')) return
  throw unusual('promise', `The customer was promised ${told}. Nothing was changed. Take it off anyway? They go on the list to call.`)
}

const unusual = (confirm: Unusual, message: string) => new AppError('conflict', message, { confirm })
