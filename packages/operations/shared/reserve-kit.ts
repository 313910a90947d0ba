import type { Tx } from '@almanac/database/client'
import { BED_FACTS, bedFacts } from '@almanac/database/read/bed-facts'
import type { Command } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import { takeFromStores } from '@almanac/softener/kit/take-from-stores'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import { companyFacts } from './company-facts.ts'
import { firmFigures } from './firm-figures.ts'
import { rebedFirm } from './rebed-firm.ts'

/** The kit of a bed's rebed from what is on record; null where it cannot be made up. */
export async function kitOfBed(tx: Tx, companyId: string, bedId: string) {
  const bed = await tx.bed.findUnique({ where: { companyId_id: { companyId, id: bedId } }, include: BED_FACTS })
  if (!bed) return null
  const display = await companyFacts(tx, companyId)
  const figures = await firmFigures(tx, companyId)
  const kit = kitOf(bedFacts(bed), rebedFirm(figures, display))
  return kit.ok ? kit.value : null
}

/**
 * Speaks for what a booked rebed will take from the stores. It never refuses: an empty shelf is shown as a shortage, it does not stop a booking. Jobs
 * of other kinds, beds whose tank is not known and what the stores do not keep reserve nothing.
 */
export async function reserveKit(tx: Tx, command: Command, visitId: string, job: { kind: string; bedId: string | null }): Promise<void> {
  const { companyId } = command
  if (job.kind !== 'rebed' || !job.bedId) return
  const kit = await kitOfBed(tx, companyId, job.bedId)
  if (!kit) return
  const items = await tx.stockItem.findMany({ where: { companyId, archivedAt: null }, orderBy: { id: 'asc' } })
  const { taken } = takeFromStores(kit, items)
  await tx.kitReservation.createMany({
    data: taken.map(({ item, quantity }) => ({ companyId, id: newId(), visitId, stockItemId: item.id, quantity, state: 'reserved' })),
  })
  if (taken.length > 0) await command.announce('kit', visitId)
}

/** Ends what a visit has spoken for: `used` at its close-out, `returned` when it is called off. */
export async function endReservation(tx: Tx, command: Command, visitId: string, state: 'used' | 'returned'): Promise<void> {
  const { count } = await tx.kitReservation.updateMany({
    where: { companyId: command.companyId, visitId, state: { in: ['reserved', 'picked'] } },
    data: { state, version: { increment: 1 } },
  })
  if (count > 0) await command.announce('kit', visitId)
}
