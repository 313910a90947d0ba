import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'

/** The last rebed that was done at a site, with its day; null where none is on record. */
export async function lastRebedAt(tx: Tx, companyId: string, siteId: string): Promise<{ visitId: string; day: string } | null> {
  const visit = await tx.visit.findFirst({
    where: { companyId, state: 'closed', outcome: 'done', job: { siteId, kind: 'rebed' } },
    select: { id: true, crewDay: { select: { day: true } } },
    orderBy: [{ startsAt: 'desc' }, { id: 'desc' }],
  })
  return visit && { visitId: visit.id, day: dayOf(visit.crewDay.day) }
}
