import type { JobKind } from '@almanac/records/job-kind'
import type { VisitState } from '@almanac/records/visit-state'
import { now } from '@almanac/runtime/clock'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { dayIn, instantIn } from '@almanac/units/calendar/zone-clock'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { BED_FACTS, bedFacts } from './bed-facts.ts'

export const WORK_PARTS = {
  crewDay: { select: { name: true, day: true } },
  assignments: { where: { released: false }, select: { colleagueId: true, colleague: { select: { name: true } } } },
  job: { include: { site: true, softener: true, bed: { include: BED_FACTS } } },
} satisfies Prisma.VisitInclude

type VisitWithWork = Prisma.VisitGetPayload<{ include: typeof WORK_PARTS }>

const AHEAD_DAYS = 7

/** A visit as a line of work. */
export function workLine(visit: VisitWithWork) {
  const { job } = visit
  return {
    visitId: visit.id,
    state: visit.state as VisitState,
    startsAt: visit.startsAt.toISOString(),
    endsAt: visit.endsAt.toISOString(),
    day: dayOf(visit.crewDay.day),
    kind: job.kind as JobKind,
    siteLabel: job.site.label,
    street: job.site.street,
    town: job.site.town,
    crewName: visit.crewDay.name,
    people: visit.assignments.map((one) => one.colleague.name).sort(),
    bed: job.bed ? bedFacts(job.bed) : null,
  }
}

/** The visits of a day and of the week after it: of the person's own crews, or of all crews for someone who is on no sheet of the firm. */
export async function readToday(scope: Pick<Scope, 'companyId'> & { personId: string }, day: string | undefined, timeZone: string) {
  const { companyId } = scope
  const asked = day ?? dayIn(timeZone, now())
  return inCompany(scope, async (tx) => {
    const self = await tx.colleague.findFirst({ where: { companyId, personId: scope.personId, archivedAt: null }, select: { id: true } })
    const found = await tx.visit.findMany({
      where: {
        companyId,
        startsAt: { gte: instantIn(timeZone, asked, 0), lt: instantIn(timeZone, addDays(asked, AHEAD_DAYS), 0) },
        state: { notIn: ['called-off', 'offered'] },
        ...(self ? { assignments: { some: { colleagueId: self.id, released: false } } } : {}),
      },
      include: WORK_PARTS,
      orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
      take: 200,
    })
    const lines = found.map((visit) => ({ line: workLine(visit), onDay: dayIn(timeZone, visit.startsAt) === asked }))
    return {
      day: asked,
      mine: self !== null,
      visits: lines.filter((one) => one.onDay).map((one) => one.line),
      next: lines.filter((one) => !one.onDay && one.line.state === 'booked').map((one) => one.line),
    }
  })
}
