import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import type { Command } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import type { CrewWanted } from './check-crew.ts'

/** Puts people on a sheet. */
export async function addMembers(tx: Tx, companyId: string, crewDayId: string, colleagueIds: readonly string[]): Promise<void> {
  const data = [...colleagueIds].sort().map((colleagueId) => ({ companyId, id: newId(), crewDayId, colleagueId }))
  await tx.crewDayMember.createMany({ data })
}

/** Opens one sheet; `crewClash` comes before. */
export async function writeSheet(tx: Tx, command: Command, crew: CrewWanted) {
  const { companyId } = command
  const { colleagueIds, day, ...rest } = crew
  const crewDayId = newId()
  await tx.crewDay.create({ data: { companyId, id: crewDayId, day: dateOf(day), ...rest } })
  await addMembers(tx, companyId, crewDayId, colleagueIds)
  await command.audit('opened', 'crew-day', crewDayId, { day, people: colleagueIds, vehicleId: crew.vehicleId })
  await command.announce('crew-day', crewDayId, 1)
  return { crewDayId, version: 1 }
}
