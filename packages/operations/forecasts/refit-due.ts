import type { Tx } from '@almanac/database/client'

/** Ended beds since the last fit that make another worth its while before the night: five, or three in a hundred of those it knew. */
const AT_LEAST = 5
const SHARE = 0.03

/** Whether enough beds have ended since the last fit, which need not be shown yet. Before the first fit the night's does. */
export async function enoughNewRecords(tx: Tx, companyId: string): Promise<boolean> {
  const last = await tx.forecastFit.findFirst({
    where: { companyId },
    orderBy: [{ finishedAt: 'desc' }, { id: 'desc' }],
    select: { endedBeds: true },
  })
  if (!last) return false
  const ended = await tx.bed.count({ where: { companyId, archivedAt: null, endedLatest: { not: null } } })
  return ended - last.endedBeds >= Math.max(AT_LEAST, SHARE * last.endedBeds)
}
