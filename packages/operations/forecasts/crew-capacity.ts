import type { Tx } from '@almanac/database/client'
import { readBookedHours, readOtherWork, readRebedsBySize } from '@almanac/database/read/desk'
import { readVisitLengths } from '@almanac/database/read/visit-lengths'
import type { JobKind } from '@almanac/records/job-kind'
import { now } from '@almanac/runtime/clock'
import { hoursAtCustomers } from '@almanac/service-rules/crews/crew-hours'
import { jobKindFacts } from '@almanac/service-rules/jobs/job-kinds'
import { learnDurations } from '@almanac/service-rules/jobs/learn-durations'
import { addDays, dayNumber, daysBetween } from '@almanac/units/calendar/calendar-day'
import { addMonths, DAYS_PER_YEAR, isoDay, monthStart } from '@almanac/units/calendar/day-number'
import { dayIn, instantIn } from '@almanac/units/calendar/zone-clock'
import { readCrewBook } from '../shared/crew-book.ts'

const DAYS_PER_MONTH = DAYS_PER_YEAR / 12
const CREW_OF_TWO = jobKindFacts.rebed.usualCrew
const crewOf = (kind: string) => jobKindFacts[kind as JobKind].usualCrew

/** The first day of each of so many months, from the month of a day on, and of the one after them. */
const monthStarts = (today: string, count: number): string[] =>
  Array.from({ length: count + 1 }, (_, later) => isoDay(monthStart(dayNumber(today), later)))

/** Hours of a crew of two for a usual rebed: by the sizes ahead within a year, as long as the company's own visits took. */
async function hoursOfRebed(tx: Tx, companyId: string): Promise<number> {
  const lengths = await readVisitLengths(tx, companyId, now(), 'rebed')
  const lengthOf = learnDurations(lengths.map((one) => ({ ...one, kind: 'rebed' })))
  const sizes = await readRebedsBySize(tx, companyId)
  const rebeds = sizes.reduce((sum, one) => sum + one.rebeds, 0)
  if (rebeds <= 0) return lengthOf('rebed', null).middle / 60
  return sizes.reduce((sum, one) => sum + one.rebeds * lengthOf('rebed', one.diameterIn).middle, 0) / rebeds / 60
}

/** What people's other work takes in a month, in hours of one person: by what the last twelve months' visits took, or as long as there are any. */
async function otherWork(tx: Tx, companyId: string, today: string, timeZone: string): Promise<number> {
  const yearAgo = isoDay(addMonths(dayNumber(today), -12))
  const { kinds, first } = await readOtherWork(tx, companyId, yearAgo)
  if (!first) return 0
  const days = Math.max(DAYS_PER_MONTH, daysBetween(dayIn(timeZone, first), today))
  return kinds.reduce((sum, { kind, hours }) => sum + hours * crewOf(kind), 0) / (days / DAYS_PER_MONTH)
}

/** Hours in a month that are booked for one kind of work or all others. */
type Booked = { rebeds: number; other: number }

/**
 * What the crews can do: hours of a crew of two that are left for rebeds in each of so many months, the present one from today on. By people's shifts, breaks, days off and the public holidays that the company keeps,
 * less driving and loading, less other work (what is booked, at least what is usual); where nobody is on day sheets, by the company's own setting.
 */
export async function crewCapacity(tx: Tx, companyId: string, today: string, timeZone: string, count = 12) {
  const settings = await tx.companySettings.findFirst({
    where: { companyId },
    select: { rebedsPerMonth: true, dayStartMinute: true, dayEndMinute: true },
  })
  const hoursEach = await hoursOfRebed(tx, companyId)
  const starts = monthStarts(today, count)
  const booked = new Map<string, Booked>()
  for (const { month, kind, hours } of await readBookedHours(tx, companyId, instantIn(timeZone, today, 0), timeZone)) {
    const one = booked.get(month) ?? { rebeds: 0, other: 0 }
    booked.set(month, kind === 'rebed' ? { ...one, rebeds: one.rebeds + hours } : { ...one, other: one.other + hours * crewOf(kind) })
  }
  const usualOther = await otherWork(tx, companyId, today, timeZone)
  const { people, holidays } = await readCrewBook(tx, companyId, today)
  const here = [...people.values()].filter((one) => !one.left).map(({ absences, ...one }) => ({ ...one, away: absences }))
  // A public holiday is everybody's: it takes hours, and is no reason to name one of them.
  const isOwn = (one: { fromDay: string; word: string | null }) => !holidays.has(one.fromDay) || holidays.get(one.fromDay) !== one.word
  const opening = { dayStartMinute: settings?.dayStartMinute ?? 480, dayEndMinute: settings?.dayEndMinute ?? 1020 }
  const months = starts.slice(0, -1).map((start, i) => {
    const [from, until] = [i === 0 ? today : start, starts[i + 1] ?? start]
    const month = start.slice(0, 7)
    const of = booked.get(month) ?? { rebeds: 0, other: 0 }
    const rest = daysBetween(from, until) / daysBetween(start, until)
    const free = hoursAtCustomers(here, opening, from, until) - Math.max(of.other, usualOther * rest)
    const crewHours = here.length > 0 ? Math.max(0, free) / CREW_OF_TWO : (settings?.rebedsPerMonth ?? 0) * hoursEach * rest
    const last = addDays(until, -1)
    const away = here.flatMap(({ name, away: absences }) =>
      absences
        .filter((one) => isOwn(one) && one.fromDay <= last && (one.untilDay === null || one.untilDay >= from))
        .map(({ fromDay, untilDay }) => ({ name, fromDay, untilDay })),
    )
    return { month, crewHours, bookedHours: of.rebeds, away }
  })
  const crewsFrom: 'shifts' | 'setting' = here.length > 0 ? 'shifts' : 'setting'
  return { hoursEach, months, crewsFrom, otherHours: usualOther / CREW_OF_TWO }
}
