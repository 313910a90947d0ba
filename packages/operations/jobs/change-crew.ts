import type { Tx } from '@almanac/database/client'
import { dayOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { notFound } from '@almanac/runtime/errors'
import { companyFacts } from '../shared/company-facts.ts'
import { handOver } from './change-day-sheet.ts'
import { refuseClash } from './check-crew.ts'

type Change = { crewDayId: string; vehicleId?: string | null; missingIds?: readonly string[] }

/** Puts another vehicle on a sheet, or none, or takes people off it; the visits left on it go over to the crew that remains, or all of it is refused. */
export async function changeCrew(tx: Tx, command: Command, { crewDayId, missingIds = [], ...change }: Change): Promise<void> {
  const { companyId } = command
  await lockRows(tx, companyId, 'crew_day', [crewDayId])
  const where = { companyId_id: { companyId, id: crewDayId } }
  const sheet = await tx.crewDay.findUnique({ where, include: { members: { select: { colleagueId: true } } } })
  if (!sheet) throw notFound('day sheet')
  const { name, startsAt, endsAt } = sheet
  const vehicleId = change.vehicleId === undefined ? sheet.vehicleId : change.vehicleId
  const colleagueIds = sheet.members
    .map((one) => one.colleagueId)
    .filter((id) => !missingIds.includes(id))
    .sort()
  const crew = { day: dayOf(sheet.day), name, colleagueIds, vehicleId, startsAt, endsAt }
  await refuseClash(tx, companyId, crew, crewDayId)
  const { version } = await tx.crewDay.update({ where, data: { vehicleId, version: { increment: 1 } } })
  await tx.crewDayMember.deleteMany({ where: { companyId, crewDayId, colleagueId: { in: [...missingIds] } } })
  await handOver(tx, companyId, crewDayId, crew, await companyFacts(tx, companyId))
  await command.audit('changed', 'crew-day', crewDayId, { people: colleagueIds, vehicleId })
  await command.announce('crew-day', crewDayId, version)
}
