import type { SheetRow } from '@almanac/database/read/day-sheet-rows'
import type { Stretch } from '@almanac/service-rules/day-sheets/free-gaps'
import { type PlacedBreak, placeBreaks } from '@almanac/service-rules/day-sheets/place-breaks'
import type { SheetToPlaceOn } from '@almanac/service-rules/day-sheets/place-on-sheet'
import { instantIn } from '@almanac/units/calendar/zone-clock'
import type { CrewOnDay } from './crew-on-day.ts'

const MINUTE_MS = 60_000

/** What a day sheet offers to a job, in the terms of the placing rule: the hours that all who are there work, less their breaks and the time in hand. */
export function offerOfSheet(sheet: SheetRow, crew: CrewOnDay, timeZone: string): SheetToPlaceOn {
  const at = (minute: number) => instantIn(timeZone, sheet.day, Math.min(1439, minute)).getTime()
  const visits = sheet.visits.map((visit) => ({ startMs: Date.parse(visit.startsAt), endMs: Date.parse(visit.endsAt) }))
  const hours = {
    startMs: Math.max(Date.parse(sheet.startsAt), ...crew.hours.map((one) => at(one.from))),
    endMs: Math.min(Date.parse(sheet.endsAt), ...crew.hours.map((one) => at(one.to))),
  }
  return {
    people: crew.people.length,
    hasVehicle: crew.vehicle !== null,
    hours: { ...hours, endMs: hours.endMs - crew.inHandMinutes * MINUTE_MS },
    taken: [...visits, ...breaksOfSheet(sheet, crew, timeZone, visits)],
  }
}

/** Where the breaks of a sheet lie beside what its visits and drives take. */
export function breaksOfSheet(
  sheet: Pick<SheetRow, 'day' | 'startsAt' | 'endsAt'>,
  crew: Pick<CrewOnDay, 'breaks'>,
  timeZone: string,
  taken: readonly Stretch[],
): PlacedBreak[] {
  const at = (minute: number) => instantIn(timeZone, sheet.day, Math.min(1439, minute)).getTime()
  const hours = { startMs: Date.parse(sheet.startsAt), endMs: Date.parse(sheet.endsAt) }
  const within = crew.breaks.filter((one) => at(one.to) > hours.startMs && at(one.from) + one.minutes * MINUTE_MS <= hours.endMs)
  return placeBreaks(
    hours,
    taken,
    within.map(({ from, to, minutes }) => ({ fromMs: at(from), untilMs: at(to), lengthMs: minutes * MINUTE_MS })),
  )
}
