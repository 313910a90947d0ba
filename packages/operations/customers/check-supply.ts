import type { Tx } from '@almanac/database/client'
import { notFound } from '@almanac/runtime/errors'

/** A supply of this company, or the answer that there is none. */
export async function checkSupply(tx: Tx, companyId: string, waterSupplyId: string): Promise<void> {
  const supply = await tx.waterSupply.findFirst({ where: { companyId, id: waterSupplyId }, select: { id: true } })
  if (!supply) throw notFound('water supply')
}
