import type { Tx } from '@almanac/database/client'
import { dateOf } from '@almanac/database/days'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { AppError, notFound } from '@almanac/runtime/errors'

/** What stands in a crew's way: for the stored answer of a command, which names nobody; `words` are for the person reading now. */
export type CrewClash = { reason: 'hours' | 'name' | 'person' | 'vehicle'; words: string }

export type CrewWanted = {
  day: string
  name: string
  colleagueIds: string[]
  vehicleId: string | null
  startsAt: Date
  endsAt: Date
}

/** Locks people and vehicle, and refuses those that are not there. Ids are checked before anything is written, so a 404 changes nothing. */
async function lockCrew(tx: Tx, companyId: string, { colleagueIds, vehicleId }: CrewWanted): Promise<void> {
  await lockRows(tx, companyId, 'colleague', colleagueIds)
  const people = await tx.colleague.count({ where: { companyId, id: { in: colleagueIds }, archivedAt: null } })
  if (people < colleagueIds.length) throw notFound('person')
  if (!vehicleId) return
  await lockRows(tx, companyId, 'vehicle', [vehicleId])
  const vehicles = await tx.vehicle.count({ where: { companyId, id: vehicleId, archivedAt: null } })
  if (vehicles === 0) throw notFound('vehicle')
}

/**
 * Why a crew cannot stand on a day's sheet: its name is taken, or one of its people or its vehicle stands on another sheet at those hours.
 * Null when it can. `exceptId` is the sheet being changed.
 */
export async function crewClash(tx: Tx, companyId: string, crew: CrewWanted, exceptId?: string): Promise<CrewClash | null> {
  if (crew.startsAt >= crew.endsAt) return { reason: 'hours', words: 'The day would end before it begins.' }
  await lockCrew(tx, companyId, crew)
  const others = await tx.crewDay.findMany({
    where: { companyId, day: dateOf(crew.day), id: exceptId ? { not: exceptId } : undefined },
    include: { members: { include: { colleague: { select: { name: true } } } }, vehicle: { select: { name: true } } },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
  })
  for (const other of others) {
    if (other.name.toLowerCase() === crew.name.toLowerCase())
      return { reason: 'name', words: `There’s already a sheet named ${other.name} on that day.` }
    if (other.startsAt >= crew.endsAt || other.endsAt <= crew.startsAt) continue
    const at = `is on the sheet ${other.name} at those hours.`
    const shared = other.members.find((member) => crew.colleagueIds.includes(member.colleagueId))
    if (shared) return { reason: 'person', words: `${shared.colleague.name} ${at}` }
    if (other.vehicleId && other.vehicleId === crew.vehicleId) return { reason: 'vehicle', words: `${other.vehicle?.name} ${at}` }
  }
  return null
}

/** As `crewClash`, as a 409. */
export async function refuseClash(tx: Tx, companyId: string, crew: CrewWanted, exceptId?: string): Promise<void> {
  const clash = await crewClash(tx, companyId, crew, exceptId)
  if (clash) throw new AppError('conflict', `${clash.words} Nothing was changed; choose others, or change that sheet first.`)
}
