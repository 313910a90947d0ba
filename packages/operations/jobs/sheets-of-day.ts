import type { DaySheet } from '@almanac/contract/day-sheets'
import type { Tx } from '@almanac/database/client'
import { inCompany, type Scope } from '@almanac/database/in-company'
import { readDaySheets } from '@almanac/database/read/day-sheets'
import { readTurns, type Turn } from '@almanac/database/read/job-turns'
import type { ShortKit } from '@almanac/database/read/short-kits'
import { type Abilities, skillsLacking } from '@almanac/service-rules/crews/crew-skills'
import { outsideSiteHours, type SiteHours } from '@almanac/service-rules/day-sheets/site-hours'
import { outOfTurn } from '@almanac/service-rules/jobs/job-turns'
import type { FirmFigures } from '@almanac/softener/firm/firm-figures'
import { formatAmount } from '@almanac/units/amount-words'
import type { Display } from '@almanac/units/display'
import { showNumber } from '@almanac/units/format-number'
import { companyFacts } from '../shared/company-facts.ts'
import { readCrewBook } from '../shared/crew-book.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { placeOfSite } from '../shared/place-of-site.ts'
import { wallMinute } from './board-times.ts'
import { type CrewOnDay, crewOnDay, sheetWarnings } from './crew-on-day.ts'
import { neededBy, valveNameOf } from './job-skills.ts'
import { breaksOfSheet } from './offer-of-sheet.ts'
import { type AskedLeg, type Drive, openTravelDesk, pointOf, workOutDrives } from './travel-desk.ts'

const MINUTE_MS = 60_000

const rounded = ({ basis, minutes, miles }: Drive): DaySheet['drives'][number] => ({
  basis,
  minutes: minutes === null ? null : Math.round(minutes),
  miles: miles === null ? null : Math.round(miles * 10) / 10,
})

type Visit = Parameters<typeof neededBy>[0] & { id: string }

/** What speaks against a visit where it stands: people who are not down for it, parts that are not there. */
function visitWarnings(
  visit: Visit,
  people: readonly Abilities[],
  figures: FirmFigures,
  shorts: readonly ShortKit[],
  display: Display,
): string[] {
  const lacking = people.length > 0 ? skillsLacking(neededBy(visit), people, valveNameOf(figures)) : null
  const parts = shorts
    .filter((one) => one.visitId === visit.id)
    .map(
      ({ item, wanted }) =>
        `Parts: ${formatAmount(item.onHand, item.unit, display)} of ${item.name} in the stores, ${showNumber(wanted, 2, display)} reserved by that day.`,
    )
  return [...(lacking ? [lacking] : []), ...parts]
}

async function turnsOn(tx: Tx, companyId: string, jobIds: string[]) {
  const where = { companyId, id: { in: jobIds }, afterJobId: { not: null } }
  return readTurns(tx, companyId, await tx.job.findMany({ where, select: { id: true, afterJobId: true, afterLeastDays: true } }))
}

/** What the visit it follows says against a day. */
function earlyAt(turn: Turn | undefined, day: string, display: Display): string[] {
  const words = turn ? outOfTurn(turn, day, display) : null
  return words ? [words] : []
}

/** What the site's own hours say against a visit where it stands. */
function shutAt(visit: { startsAt: string; endsAt: string }, hours: SiteHours, day: string, display: Display): string[] {
  const wall = (instant: string) => wallMinute(display.timeZone, day, new Date(instant))
  const words = outsideSiteHours(hours, day, wall(visit.startsAt), wall(visit.endsAt), display)
  return words ? [words] : []
}

type Timed = { day: string; startsAt: string; endsAt: string; visits: readonly { startsAt: string; endsAt: string }[] }

/** A sheet's breaks, beside its visits and the drives that come before each of them and after the last. */
function breaksBeside(sheet: Timed, crew: CrewOnDay, drives: readonly Drive[], timeZone: string): DaySheet['breaks'] {
  const visits = sheet.visits.map((visit) => ({ startMs: Date.parse(visit.startsAt), endMs: Date.parse(visit.endsAt) }))
  const driven = drives.map(({ minutes }, n) => {
    const lasts = (minutes ?? 0) * MINUTE_MS
    const [before, next] = [visits[n - 1]?.endMs ?? 0, visits[n]?.startMs]
    return next === undefined ? { startMs: before, endMs: before + lasts } : { startMs: next - lasts, endMs: next }
  })
  return breaksOfSheet(sheet, crew, timeZone, [...visits, ...driven]).map(({ startMs, endMs, fits }) => ({
    ...{ startsAt: new Date(startMs).toISOString(), endsAt: new Date(endMs).toISOString(), fits },
  }))
}

/** The day sheets with their drives: from the yard to the first visit, between visits, and back. */
export async function sheetsOfDay(scope: Pick<Scope, 'companyId'>, day: string) {
  const read = await readDaySheets(scope, day)
  const desk = await openTravelDesk(scope, read.timeZone)
  const { timeZone, shorts } = read
  const { book, figures, turns, display } = await inCompany(scope, async (tx) => ({
    display: await companyFacts(tx, scope.companyId),
    book: await readCrewBook(tx, scope.companyId, day),
    figures: await firmFigures(tx, scope.companyId),
    turns: await turnsOn(
      tx,
      scope.companyId,
      read.sheets.flatMap((sheet) => sheet.visits.map((visit) => visit.jobId)),
    ),
  }))
  const sheets = read.sheets.map((sheet) => {
    const crew = crewOnDay(book, sheet)
    const { people, home } = crew
    const warnings = sheetWarnings(book, sheet, display)
    const visits = sheet.visits.map(({ coordinates, valveCardIds, siteHours, ...visit }) => ({
      ...visit,
      place: placeOfSite(coordinates, timeZone),
      warnings:
        visit.state === 'booked'
          ? [
              ...earlyAt(turns.get(visit.jobId), sheet.day, display),
              ...shutAt(visit, siteHours, sheet.day, display),
              ...visitWarnings({ ...visit, valveCardIds }, people, figures, shorts, display),
            ]
          : [],
    }))
    return { ...sheet, crew, visits, warnings, home: home && { latitude: home.latitude, longitude: home.longitude } }
  })
  const legs = sheets.map(({ visits, startsAt, home }): AskedLeg[] => {
    const start = home ? pointOf(home) : desk.yard
    const stops = [start, ...visits.map((visit) => visit.place && pointOf(visit.place)), start]
    const leaves = [startsAt, ...visits.map((visit) => visit.endsAt)]
    return visits.length === 0 ? [] : leaves.map((at, n) => ({ from: stops[n] ?? null, to: stops[n + 1] ?? null, at: new Date(at) }))
  })
  const drives = await workOutDrives(desk, legs.flat())
  let from = 0
  const withDrives = sheets.map((sheet, n) => {
    const own = drives.slice(from, from + (legs[n]?.length ?? 0))
    from += own.length
    const { crew, ...shown } = sheet
    return { ...shown, drives: own.map(rounded), breaks: breaksBeside(shown, crew, own, timeZone) }
  })
  const holiday = book.holidays.get(day) ?? null
  return { ...read, sheets: withDrives, holiday, yard: desk.yard && { latitude: desk.yard.lat, longitude: desk.yard.lon }, pace: desk.pace }
}
