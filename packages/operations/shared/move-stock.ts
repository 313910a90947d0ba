import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import type { MovementReason } from '@almanac/records/stock'
import { notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'

export type StockMove = {
  stockItemId: string
  quantity: number
  reason: MovementReason
  visitId?: string | null
  /** The job whose materials these are. */
  jobId?: string
}

/**
 * Writes movements and what is on hand. A part used is a fact: it always lands, and opens a discrepancy when the shelf should have held less. Items
 * are locked in id order, so that two close-outs never wait in a circle.
 */
export async function moveStock(tx: Tx, command: Command, moves: StockMove[]): Promise<void> {
  const { companyId } = command
  const ids = [...new Set(moves.map((move) => move.stockItemId))].sort()
  await lockRows(tx, companyId, 'stock_item', ids)
  for (const move of moves) {
    const item = await tx.stockItem.findUnique({ where: { companyId_id: { companyId, id: move.stockItemId } } })
    if (!item) throw notFound('stock item')
    const id = newId()
    await tx.movement.create({
      data: {
        companyId,
        id,
        stockItemId: item.id,
        quantity: move.quantity,
        reason: move.reason,
        visitId: move.visitId ?? null,
        jobId: move.jobId ?? null,
        at: command.at,
        personId: command.personId,
      },
    })
    const left = item.onHand + move.quantity
    if (left < 0 && (move.reason === 'used' || move.reason === 'handed-over'))
      await tx.discrepancy.create({
        data: {
          companyId,
          id: newId(),
          stockItemId: item.id,
          movementId: id,
          expected: item.onHand,
          found: -move.quantity,
          openedAt: command.at,
        },
      })
    await tx.stockItem.update({
      where: { companyId_id: { companyId, id: item.id } },
      // Never below nothing: what was used was there, whatever the books said.
      data: { onHand: Math.max(0, left), version: { increment: 1 } },
    })
    await command.announce('stock-item', item.id, item.version + 1)
  }
}
