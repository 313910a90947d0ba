import type { OpenDaySheet } from '@almanac/contract/day-sheets'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { instantAt } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { refuseClash } from './check-crew.ts'
import { writeSheet } from './write-sheet.ts'

/** Opens one crew's sheet for a day: name, people, vehicle and hours. */
export async function openDaySheet(scope: Scope & { personId: string }, input: OpenDaySheet) {
  return runCommand(scope, 'jobs.open-day-sheet', input, async (tx, command) => {
    const { timeZone } = await companyFacts(tx, scope.companyId)
    const crew = {
      day: input.day,
      name: input.name,
      colleagueIds: [...new Set(input.colleagueIds)],
      vehicleId: input.vehicleId,
      startsAt: instantAt(timeZone, input.day, input.from),
      endsAt: instantAt(timeZone, input.day, input.until),
    }
    await refuseClash(tx, scope.companyId, crew)
    return writeSheet(tx, command, crew)
  })
}
