import type { Tx } from '../client.ts'
import { Prisma } from '../generated/client.ts'

/** The newest so many are enough to learn from, however large the firm. */
const MOST = 4000
const YEARS_BACK_MS = 2 * 365.25 * 86_400_000

/**
 * What the newest visits closed on a tablet in the last two years took on site, by its begin and end; null minutes where either is missing. `kind`: of this kind
 * only. Visits known from older books never had such times and are no part of it.
 */
export async function readVisitLengths(tx: Tx, companyId: string, at: Date, kind?: string) {
  const visits = await tx.visit.findMany({
    where: {
      companyId,
      state: 'closed',
      NOT: { closeOut: { equals: Prisma.DbNull } },
      closedAt: { gte: new Date(at.getTime() - YEARS_BACK_MS) },
      ...(kind === undefined ? {} : { job: { kind } }),
    },
    select: { closeOut: true, job: { select: { kind: true, bed: { select: { tank: { select: { diameterIn: true } } } } } } },
    orderBy: [{ closedAt: 'desc' }, { id: 'asc' }],
    take: MOST,
  })
  return visits.map(({ closeOut, job }) => {
    const { startedAt, finishedAt } = (closeOut ?? {}) as { startedAt?: unknown; finishedAt?: unknown }
    const known = typeof startedAt === 'string' && typeof finishedAt === 'string'
    return {
      kind: job.kind,
      diameterIn: job.bed?.tank.diameterIn ?? null,
      minutes: known ? (Date.parse(finishedAt) - Date.parse(startedAt)) / 60_000 : null,
    }
  })
}
