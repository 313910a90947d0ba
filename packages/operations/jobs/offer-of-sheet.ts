import type { SheetRow } from '@almanac/database/read/day-sheet-rows'
import type { SheetToPlaceOn } from '@almanac/service-rules/day-sheets/place-on-sheet'

/** What a day sheet offers to a job, in the terms of the placing rule. */
export function offerOfSheet(sheet: SheetRow): SheetToPlaceOn {
  return {
    people: sheet.members.length,
    hasVehicle: sheet.vehicle !== null,
    hours: { startMs: Date.parse(sheet.startsAt), endMs: Date.parse(sheet.endsAt) },
    taken: sheet.visits.map((visit) => ({ startMs: Date.parse(visit.startsAt), endMs: Date.parse(visit.endsAt) })),
  }
}
