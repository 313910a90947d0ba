import type { Tx } from '@almanac/database/client'
import { rewriteSiteTokens } from '../shared/site-tokens.ts'

/** Rewrites the search words of every site a customer holds. */
export async function rewriteCustomerTokens(tx: Tx, companyId: string, customerId: string): Promise<void> {
  const held = await tx.tenure.findMany({ where: { companyId, customerId, toDay: null }, select: { siteId: true } })
  await rewriteSiteTokens(
    tx,
    companyId,
    held.map((tenure) => tenure.siteId),
  )
}
