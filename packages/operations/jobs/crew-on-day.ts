import type { CrewPerson } from '@almanac/contract/crews'
import type { SheetRow } from '@almanac/database/read/day-sheet-rows'
import { awayOn, crewWarnings, hoursOn, isOff, offWarnings } from '@almanac/service-rules/crews/working-day'
import { clockIn, minuteOfClock } from '@almanac/units/calendar/zone-clock'
import type { ClockDisplay } from '@almanac/units/format-clock'
import type { DayDisplay } from '@almanac/units/format-day'
import type { CrewBook } from '../shared/crew-book.ts'

type Sheet = Pick<SheetRow, 'day' | 'startsAt' | 'endsAt' | 'members' | 'vehicle'>

const asAtWork = ({ name, shifts, absences }: CrewPerson) => ({ name, shifts, away: absences })

/** Who of a sheet's people works that day, what they drive, when all of them work (minutes since midnight), their breaks and where they start. `everybody`: whoever is off counts too. */
export function crewOnDay(book: CrewBook, sheet: Sheet, everybody = false) {
  const on = sheet.members.flatMap(({ colleagueId }) => book.people.get(colleagueId) ?? [])
  const people = on.filter((one) => everybody || !isOff(asAtWork(one), sheet.day))
  const known = sheet.vehicle && book.vehicles.get(sheet.vehicle.id)
  const vehicle = known && awayOn(known.absences, sheet.day) ? null : sheet.vehicle
  const hours = people.flatMap((one) => {
    const shift = hoursOn(one, sheet.day)
    return shift === null || shift === 'off' ? [] : [{ from: minuteOfClock(shift.from), to: minuteOfClock(shift.until) }]
  })
  const breaks = new Map(people.flatMap((one) => one.breaks).map((one) => [`${one.from} ${one.until} ${one.minutes}`, one]))
  const atHome = people.find((one) => one.startsAtHome && one.home)
  return {
    people,
    vehicle,
    hours,
    inHandMinutes: book.inHandMinutes,
    breaks: [...breaks.values()].map(({ from, until, minutes }) => ({ from: minuteOfClock(from), to: minuteOfClock(until), minutes })),
    /** Whose home the crew starts from; null for the yard. */
    home: atHome?.home ? { personId: atHome.id, ...atHome.home } : null,
  }
}

export type CrewOnDay = ReturnType<typeof crewOnDay>

/** A sheet's people and vehicle with the days on which they are away. */
function atWork(book: CrewBook, { day, members, vehicle }: Pick<Sheet, 'day' | 'members' | 'vehicle'>) {
  const known = vehicle && book.vehicles.get(vehicle.id)
  return {
    day,
    people: members.flatMap(({ colleagueId }) => book.people.get(colleagueId) ?? []).map(asAtWork),
    vehicle: known ? { name: known.name, away: known.absences } : null,
  }
}

/** What does not agree between a sheet and its people and vehicle, in words. */
export const sheetWarnings = (book: CrewBook, sheet: Sheet, display: ClockDisplay): string[] =>
  crewWarnings(
    { ...atWork(book, sheet), from: clockIn(display.timeZone, sheet.startsAt), until: clockIn(display.timeZone, sheet.endsAt) },
    display,
  )

/** Who of a sheet is not there at all, and a vehicle off the road, in words: that a shift is shorter than the sheet is left out. */
export const absentFromSheet = (book: CrewBook, sheet: Pick<Sheet, 'day' | 'members' | 'vehicle'>, display: DayDisplay): string[] =>
  offWarnings(atWork(book, sheet), display)
