import type { DaySheet } from '@almanac/contract/day-sheets'

/** People and vehicles on the day's sheets, each with the name of its sheet; `exceptId` is the sheet being changed. */
export function takenBy(sheets: readonly DaySheet[], exceptId?: string): Map<string, string> {
  const taken = new Map<string, string>()
  for (const sheet of sheets) {
    if (sheet.id === exceptId) continue
    for (const member of sheet.members) taken.set(member.colleagueId, sheet.name)
    if (sheet.vehicle) taken.set(sheet.vehicle.id, sheet.name)
  }
  return taken
}
