import type { Tx } from '../client.ts'

const MOST = 4000
const YEARS_BACK_MS = 2 * 365.25 * 86_400_000

/** What closed visits of the last two years took on site, by the tablet's begin and end. */
export async function readVisitLengths(tx: Tx, companyId: string, at: Date) {
  const visits = await tx.visit.findMany({
    where: { companyId, state: 'closed', closedAt: { gte: new Date(at.getTime() - YEARS_BACK_MS) } },
    select: { closeOut: true, job: { select: { kind: true, bed: { select: { tank: { select: { diameterIn: true } } } } } } },
    orderBy: [{ closedAt: 'desc' }, { id: 'asc' }],
    take: MOST,
  })
  return visits.flatMap(({ closeOut, job }) => {
    const { startedAt, finishedAt } = (closeOut ?? {}) as { startedAt?: unknown; finishedAt?: unknown }
    if (typeof startedAt !== 'string' || typeof finishedAt !== 'string') return []
    const minutes = (Date.parse(finishedAt) - Date.parse(startedAt)) / 60_000
    return [{ kind: job.kind, diameterIn: job.bed?.tank.diameterIn ?? null, minutes }]
  })
}
