import type { CopyDaySheets } from '@almanac/contract/day-sheets'
import type { Tx } from '@almanac/database/client'
import { dateOf, dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { clockIn, instantAt } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { crewClash } from './check-crew.ts'
import { writeSheet } from './write-sheet.ts'

/** The sheets of the last day before `day` that has any, with people and vehicles that are still with the firm. */
async function lastSheets(tx: Tx, companyId: string, day: string) {
  const last = await tx.crewDay.findFirst({
    where: { companyId, day: { lt: dateOf(day) } },
    orderBy: { day: 'desc' },
    select: { day: true },
  })
  if (!last) throw new AppError('conflict', 'There’s no earlier day with sheets to copy. Nothing was added; open the first sheet by hand.')
  const sheets = await tx.crewDay.findMany({
    where: { companyId, day: last.day },
    include: { members: { where: { colleague: { archivedAt: null } }, select: { colleagueId: true } }, vehicle: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
  })
  return { fromDay: dayOf(last.day), sheets }
}

/**
 * Opens the crews of the previous working day again: same people, vehicle and clock hours, no visits. A sheet that clashes with one
 * already open is left out and told. The clock counts, not the hours since midnight, so a change of clocks moves nothing.
 */
export async function copyDaySheets(scope: Scope & { personId: string }, input: CopyDaySheets) {
  return runCommand(scope, 'jobs.copy-day-sheets', input, async (tx, command) => {
    const { companyId } = scope
    const { timeZone } = await companyFacts(tx, companyId)
    const { fromDay, sheets } = await lastSheets(tx, companyId, input.day)
    const sameClock = (instant: Date) => instantAt(timeZone, input.day, clockIn(timeZone, instant))
    const opened = []
    const left = []
    for (const sheet of sheets) {
      const crew = {
        day: input.day,
        name: sheet.name,
        colleagueIds: sheet.members.map((member) => member.colleagueId),
        vehicleId: sheet.vehicle && sheet.vehicle.archivedAt === null ? sheet.vehicle.id : null,
        startsAt: sameClock(sheet.startsAt),
        endsAt: sameClock(sheet.endsAt),
      }
      const clash = await crewClash(tx, companyId, crew)
      if (clash) left.push({ crewDayId: sheet.id, reason: clash.reason })
      else opened.push(await writeSheet(tx, command, crew))
    }
    return { fromDay, opened, left }
  })
}
