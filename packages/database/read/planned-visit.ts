import { bedRenewingKinds } from '@almanac/records/job-kind'
import { inCompany, type Scope } from '../in-company.ts'

/** A visit that is to come or under way: when, and who comes. */
export type PlannedVisit = { startsAt: string; crewName: string; people: string[] }

/** The next visit for the rebed of a bed that is booked or under way; null where there is none. */
export async function readPlannedVisit(scope: Pick<Scope, 'companyId'>, bedId: string): Promise<PlannedVisit | null> {
  const { companyId } = scope
  return inCompany(scope, async (tx) => {
    const visit = await tx.visit.findFirst({
      where: { companyId, state: { in: ['booked', 'under-way'] }, job: { bedId, kind: { in: [...bedRenewingKinds] } } },
      select: {
        startsAt: true,
        crewDay: { select: { name: true } },
        assignments: { where: { released: false }, select: { colleague: { select: { name: true } } } },
      },
      orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
    })
    if (!visit) return null
    const people = visit.assignments.map((one) => one.colleague.name).sort()
    return { startsAt: visit.startsAt.toISOString(), crewName: visit.crewDay.name, people }
  })
}
