import type { Tx } from '@almanac/database/client'
import { notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { firmFigures } from '../shared/firm-figures.ts'

/** Gives the valves of a softener a card of the firm's, or takes it away; takes a valve down where none was recorded. */
export async function setValveCard(tx: Tx, change: { companyId: string; softenerId: string; cardId: string | null }): Promise<void> {
  const { companyId, softenerId, cardId } = change
  const where = { companyId, softenerId, archivedAt: null }
  const valves = await tx.valve.findMany({ where, select: { id: true, cardId: true } })
  if (valves.length > 0 && valves.every((valve) => valve.cardId === cardId)) return
  if (cardId === null) {
    await tx.valve.updateMany({ where, data: { cardId, version: { increment: 1 } } })
    return
  }
  const card = (await firmFigures(tx, companyId)).valves.find((one) => one.id === cardId)
  if (!card) throw notFound('valve card')
  const facts = { cardId, control: card.control }
  if (valves.length > 0) await tx.valve.updateMany({ where, data: { ...facts, version: { increment: 1 } } })
  else await tx.valve.create({ data: { companyId, id: newId(), softenerId, label: card.label, ...facts } })
}
