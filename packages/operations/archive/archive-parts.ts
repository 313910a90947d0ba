import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import { openJobStates } from '@almanac/records/job-state'
import { AppError } from '@almanac/runtime/errors'

const CHUNK = 500

/** Refuses where something is still to be done: a crew must not come to what is no longer looked after. */
export async function refuseOpenJobs(tx: Tx, companyId: string, at: { siteIds: string[] } | { softenerId: string }): Promise<void> {
  const where =
    'siteIds' in at
      ? { siteId: { in: at.siteIds } }
      : { OR: [{ softenerId: at.softenerId }, { bed: { tank: { softenerId: at.softenerId } } }] }
  const open = await tx.job.count({ where: { companyId, ...where, state: { in: [...openJobStates] } } })
  if (open > 0)
    throw new AppError(
      'conflict',
      `${open === 1 ? 'One job is' : `${open} jobs are`} still open here. Nothing was archived; close or call off ${open === 1 ? 'it' : 'them'} first.`,
    )
}

/** Takes agreements out of the rounds with what they are about, or brings back those that went with it: from one mark to another. */
export async function setAgreementsAside(
  tx: Tx,
  command: Command,
  of: { softenerId: { in: string[] } } | { siteId: { in: string[] } },
  from: Date | null,
  to: Date | null,
): Promise<void> {
  const { companyId } = command
  const { count } = await tx.agreement.updateMany({
    where: { companyId, ...of, archivedAt: from },
    data: { archivedAt: to, version: { increment: 1 } },
  })
  if (count > 0) await command.announce('agreement', companyId)
}

/** Has beds forecast again, or lose their forecast; a few hundred a task, so that each stays short. */
async function forecastAgain(command: Command, bedIds: readonly string[]): Promise<void> {
  for (let start = 0; start < bedIds.length; start += CHUNK)
    await command.enqueue('forecast-beds', { bedIds: bedIds.slice(start, start + CHUNK), cause: 'edit' })
}

/**
 * Takes the beds in service of these softeners out of forecasts, and the softeners with `alsoSofteners` too, all at the command's own instant: by it they come back
 * together. Beds that ended before stay what they are, history that the forecasts learn from.
 */
export async function archiveBeds(tx: Tx, command: Command, softenerIds: readonly string[], alsoSofteners: boolean): Promise<void> {
  const { companyId, at } = command
  if (alsoSofteners)
    await tx.softener.updateMany({
      where: { companyId, id: { in: [...softenerIds] }, archivedAt: null },
      data: { archivedAt: at, version: { increment: 1 } },
    })
  const where = { companyId, endedLatest: null, archivedAt: null, tank: { softenerId: { in: [...softenerIds] } } }
  const beds = await tx.bed.findMany({ where, select: { id: true }, orderBy: { id: 'asc' } })
  const ids = beds.map((bed) => bed.id)
  await tx.bed.updateMany({ where: { companyId, id: { in: ids } }, data: { archivedAt: at, version: { increment: 1 } } })
  await setAgreementsAside(tx, command, { softenerId: { in: [...softenerIds] } }, null, at)
  await forecastAgain(command, ids)
  for (const id of softenerIds) await command.announce('softener', id)
  await command.announce('bed', companyId)
  await command.enqueue('raise-reminders', {}, companyId)
}

/** Brings back what was archived with something at `since`. */
export async function restoreBeds(tx: Tx, command: Command, softenerIds: readonly string[], since: Date): Promise<void> {
  const { companyId } = command
  await tx.softener.updateMany({
    where: { companyId, id: { in: [...softenerIds] }, archivedAt: since },
    data: { archivedAt: null, archiveReason: null, version: { increment: 1 } },
  })
  const where = { companyId, archivedAt: since, tank: { softenerId: { in: [...softenerIds] } } }
  const beds = await tx.bed.findMany({ where, select: { id: true }, orderBy: { id: 'asc' } })
  const ids = beds.map((bed) => bed.id)
  await tx.bed.updateMany({ where: { companyId, id: { in: ids } }, data: { archivedAt: null, version: { increment: 1 } } })
  await setAgreementsAside(tx, command, { softenerId: { in: [...softenerIds] } }, since, null)
  await forecastAgain(command, ids)
  for (const id of softenerIds) await command.announce('softener', id)
  await command.announce('bed', companyId)
  await command.enqueue('raise-reminders', {}, companyId)
}
