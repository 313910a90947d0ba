import { inCompany, type Scope } from '../in-company.ts'

const MOST = 4000

export type ClosedVisit = {
  crewDayId: string
  startedAt: string
  finishedAt: string
  latitude: number | null
  longitude: number | null
}

/** Closed visits since an instant, in the order in which each crew did them, with what the tablet wrote of begin and end. */
export async function readClosedVisits(scope: Pick<Scope, 'companyId'>, since: Date): Promise<ClosedVisit[]> {
  return inCompany(scope, async (tx) => {
    const visits = await tx.visit.findMany({
      where: { companyId: scope.companyId, state: 'closed', closedAt: { gte: since } },
      select: { crewDayId: true, closeOut: true, job: { select: { site: { select: { latitude: true, longitude: true } } } } },
      orderBy: [{ closedAt: 'desc' }, { id: 'asc' }],
      take: MOST,
    })
    const found = visits.flatMap(({ crewDayId, closeOut, job }) => {
      const { startedAt, finishedAt } = (closeOut ?? {}) as { startedAt?: unknown; finishedAt?: unknown }
      return typeof startedAt === 'string' && typeof finishedAt === 'string' ? [{ crewDayId, startedAt, finishedAt, ...job.site }] : []
    })
    return found.sort((a, b) => (a.crewDayId === b.crewDayId ? (a.startedAt < b.startedAt ? -1 : 1) : a.crewDayId < b.crewDayId ? -1 : 1))
  })
}
