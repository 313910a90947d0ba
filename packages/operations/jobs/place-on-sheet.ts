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
import type { Unusually } from './drives-of-place.ts'
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
  job: Following & {
    kind: string
    minutes: number
    crewSize: number
    needsVehicle: boolean | null
    softenerId: string | null
    bedId: string | null
    siteId: string
  }
  sheet: LockedSheet
  at: string
  confirmed: readonly Unusual[]
  now: Date
  /** What its drives say against it, worked out outside the transaction. */
  drives: readonly Unusually[]
  /** The visit that is moved: its own kit is there for it, and what it promised counts. */
  visit?: Window & { id: string }
}

/**
 * What a job at a time takes of a sheet. Refuses where the crew cannot do it, and asks to confirm what is allowed but unusual, all of it at once: a 409 whose
 * `detail.confirm` names it.
 */
export async function placeWanted(tx: Tx, companyId: string, wish: Wish): Promise<PlaceWanted> {
  const { job, sheet, at, confirmed, now, visit, drives } = wish
  const display = await companyFacts(tx, companyId)
  const { timeZone } = display
  const colleagueIds = sheet.members.map((member) => member.colleagueId)
  const wants = { kind: job.kind as JobKind, minutes: job.minutes, crewSize: job.crewSize, needsVehicle: job.needsVehicle }
  const lacks = crewLacks(wants, { people: colleagueIds.length, hasVehicle: sheet.vehicleId !== null })
  if (lacks) throw new AppError('conflict', `${lacks} Nothing was changed; choose another sheet or change this one’s crew.`, { lacks })
  const startsAt = instantAt(timeZone, dayOf(sheet.day), at)
  const endsAt = endOf(startsAt, job.minutes)
  const clock = (instant: Date) => formatClock(instant, display)
  const found: Unusually[] = []
  if (startsAt < now)
    found.push({
      confirm: 'past',
      words: `${formatNearDay(dayOf(sheet.day), display)}, ${formatClockTime(at, display)} has already passed.`,
    })
  if (startsAt < sheet.startsAt || endsAt > sheet.endsAt)
    found.push({
      confirm: 'outside-hours',
      words: `The visit would last from ${clock(startsAt)} to ${clock(endsAt)}, but this crew works from ${clock(sheet.startsAt)} to ${clock(sheet.endsAt)}.`,
    })
  found.push(...drives)
  const planned = { job, sheet, timeZone, today: dayIn(timeZone, now), visitId: visit?.id, startsAt, endsAt }
  found.push(...(await planningWarnings(tx, companyId, planned)))
  const told = visit && !keepsPromise(visit, startsAt) ? promisedWords(visit, display) : null
  if (told) found.push({ confirm: 'promise', words: `The customer was promised ${told}. They would go on the list to call.` })
  const left = found.filter((one) => !confirmed.includes(one.confirm))
  const whatToDo = visit ? 'Move it there anyway?' : 'Book it there anyway?'
  if (left.length > 0) throw unusual(left, `${left.map((one) => one.words).join(' ')} Nothing was changed. ${whatToDo}`)
  return { companyId, display, colleagueIds, vehicleId: sheet.vehicleId, startsAt, endsAt }
}

type Window = { promisedBy: string | null; arriveFrom: Date | null; arriveUntil: Date | null }

/** "Thu, Dec 3 between 8:00 AM and 12:00 PM"; null where nothing was promised. */
function promisedWords({ promisedBy, arriveFrom, arriveUntil }: Window, display: ClockDisplay): string | null {
  if (!promisedBy || !arriveFrom || !arriveUntil) return null
  const when = formatNearDay(dayIn(display.timeZone, arriveFrom), display)
  return `${when} between ${formatClock(arriveFrom, display)} and ${formatClock(arriveUntil, display)}`
}

/** A promised visit that comes off its sheet has to be confirmed, since somebody must call its customer. */
export async function refuseLostPromise(tx: Tx, companyId: string, visit: Window, confirmed: readonly Unusual[]): Promise<void> {
  const told = promisedWords(visit, await companyFacts(tx, companyId))
  if (!told || confirmed.includes('promise')) return
  throw unusual(
    [{ confirm: 'promise' }],
    `The customer was promised ${told}. Nothing was changed. Take it off anyway? They go on the list to call.`,
  )
}

const unusual = (found: readonly Pick<Unusually, 'confirm'>[], message: string) =>
  new AppError('conflict', message, { confirm: [...new Set(found.map((one) => one.confirm))] })
