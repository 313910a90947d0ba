import type { Tx } from '@almanac/database/client'
import type { Command } from '@almanac/database/run-command'

/** Has the open beds of a site, or of one of its softeners, forecast anew: call it in the transaction that changed what reaches them. */
export async function refreshSiteForecasts(tx: Tx, command: Command, of: { siteId?: string; softenerId?: string }): Promise<void> {
  const { companyId } = command
  const beds = await tx.bed.findMany({
    where: { companyId, endedLatest: null, archivedAt: null, tank: { softener: { id: of.softenerId, siteId: of.siteId } } },
    select: { id: true },
  })
  if (beds.length > 0) await command.enqueue('forecast-beds', { bedIds: beds.map((bed) => bed.id), cause: 'edit' })
}
