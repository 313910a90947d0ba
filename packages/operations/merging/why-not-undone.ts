import type { Tx } from '@almanac/database/client'

type Merging = { companyId: string; kind: string; keptId: string | null; goneId: string | null; undoneAt: Date | null }

/** Why a merging can't be undone as things are, in a sentence; null where it can. */
export async function whyNotUndone(tx: Tx, { companyId, kind, keptId, goneId, undoneAt }: Merging): Promise<string | null> {
  if (undoneAt) return 'This was undone already.'
  if (!keptId || !goneId) return null
  if (kind === 'site') {
    const kept = await tx.site.findFirst({ where: { companyId, id: keptId }, select: { archivedAt: true } })
    return kept?.archivedAt ? 'The site that was kept is archived or merged itself. Bring it back first.' : null
  }
  if (kind === 'supply') {
    const kept = await tx.waterSupply.findFirst({ where: { companyId, id: keptId }, select: { archivedAt: true } })
    return kept?.archivedAt ? 'The supply that was kept is archived or merged itself. Undo that first.' : null
  }
  const both = await tx.customer.findMany({ where: { companyId, id: { in: [keptId, goneId] } } })
  if (both.some((one) => one.erasedAt !== null)) return 'They were erased since.'
  const kept = both.find((one) => one.id === keptId)
  return kept?.archivedAt ? 'The customer that was kept is archived or merged itself. Bring them back first.' : null
}
