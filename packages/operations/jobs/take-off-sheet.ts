import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import { releaseMaterials } from '../shared/give-materials.ts'
import { endReservation } from '../shared/reserve-kit.ts'
import { releasePlace } from './lock-slot.ts'
import { breakPromise } from './promises.ts'

/**
 * Calls off one booked visit whose job is locked: people and vehicle are free again, the row stays as history. A customer who was promised it goes on the list
 * of whom to call, unless somebody told them. Answers its new version.
 */
export async function takeOffSheet(tx: Tx, command: Command, visitId: string, told = false): Promise<number> {
  const { companyId } = command
  const changed = await tx.visit.update({
    where: { companyId_id: { companyId, id: visitId } },
    data: { state: 'called-off', version: { increment: 1 } },
  })
  await releasePlace(tx, companyId, visitId)
  await endReservation(tx, command, visitId, 'returned')
  await releaseMaterials(tx, command, changed.jobId, 'reserved')
  await breakPromise(tx, command, changed, { told })
  await command.audit('called off', 'visit', visitId, { jobId: changed.jobId, crewDayId: changed.crewDayId })
  await command.announce('visit', visitId, changed.version)
  return changed.version
}

/** Calls off the booked visit of a locked job, if it has one. */
export async function takeJobOffSheet(tx: Tx, command: Command, jobId: string, told: boolean): Promise<void> {
  const booked = await tx.visit.findFirst({ where: { companyId: command.companyId, jobId, state: 'booked' }, select: { id: true } })
  if (booked) await takeOffSheet(tx, command, booked.id, told)
}
