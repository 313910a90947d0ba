import type { SheetRow } from '@almanac/database/read/day-sheet-rows'
import type { SheetToPlaceOn } from '@almanac/service-rules/day-sheets/place-on-sheet'
import { instantIn } from '@almanac/units/calendar/zone-clock'
import type { CrewOnDay } from './crew-on-day.ts'

/** What a day sheet offers to a job, in the terms of the placing rule: the hours that all who are there work, less their breaks. */
export function offerOfSheet(sheet: SheetRow, crew: CrewOnDay, timeZone: string): SheetToPlaceOn {
  const at = (minute: number) => instantIn(timeZone, sheet.day, Math.min(1439, minute)).getTime()
  return {
    people: crew.people.length,
    hasVehicle: crew.vehicle !== null,
    hours: {
      startMs: Math.max(Date.parse(sheet.startsAt), ...crew.hours.map((one) => at(one.from))),
      endMs: Math.min(Date.parse(sheet.endsAt), ...crew.hours.map((one) => at(one.to))),
    },
    taken: [
      ...sheet.visits.map((visit) => ({ startMs: Date.parse(visit.startsAt), endMs: Date.parse(visit.endsAt) })),
      ...crew.breaks.map(({ from, minutes }) => ({ startMs: at(from), endMs: at(from) + minutes * 60_000 })),
    ],
  }
}
