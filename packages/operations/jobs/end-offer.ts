import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { takeOffSheet } from './take-off-sheet.ts'

type Ended = 'withdrawn' | 'lapsed' | 'confirmed'

/** Ends a locked offer: what it still holds is free again. Answers its new version. */
export async function endOffer(tx: Tx, command: Command, offerId: string, state: Ended): Promise<number> {
  const { companyId } = command
  const held = await tx.visit.findMany({ where: { companyId, offerId, state: 'offered' }, select: { id: true }, orderBy: { id: 'asc' } })
  for (const { id } of held) await takeOffSheet(tx, command, id)
  const changed = await tx.windowOffer.update({
    where: { companyId_id: { companyId, id: offerId } },
    data: { state, version: { increment: 1 } },
  })
  await command.audit(state, 'window-offer', offerId, { jobId: changed.jobId })
  await command.announce('job', changed.jobId)
  return changed.version
}

/** Withdraws what is still offered for a locked job: it was booked, held or called off meanwhile. */
export async function withdrawOffersOf(tx: Tx, command: Command, jobId: string): Promise<void> {
  const { companyId } = command
  const open = await tx.windowOffer.findFirst({ where: { companyId, jobId, state: 'open' }, select: { id: true } })
  if (!open) return
  await lockRows(tx, companyId, 'window_offer', [open.id])
  const still = await tx.windowOffer.findUnique({ where: { companyId_id: { companyId, id: open.id } }, select: { state: true } })
  if (still?.state === 'open') await endOffer(tx, command, open.id, 'withdrawn')
}

/** Ends every offer whose time has passed, so that nobody is refused a time that is held for no one. */
export async function lapseOffers(tx: Tx, command: Command): Promise<number> {
  const { companyId } = command
  const where = { companyId, state: 'open', expiresAt: { lte: command.at } }
  const seen = await tx.windowOffer.findMany({ where, select: { id: true } })
  if (seen.length === 0) return 0
  const ids = seen.map((one) => one.id)
  await lockRows(tx, companyId, 'window_offer', ids)
  const still = await tx.windowOffer.findMany({ where: { ...where, id: { in: ids } }, select: { id: true }, orderBy: { id: 'asc' } })
  for (const { id } of still) await endOffer(tx, command, id, 'lapsed')
  return still.length
}
