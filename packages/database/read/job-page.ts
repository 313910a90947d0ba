import type { AgreementKind } from '@almanac/records/agreement'
import { askedFor } from '@almanac/records/asked-for'
import type { BesideVisit } from '@almanac/records/beside-visit'
import type { PromiseWay } from '@almanac/records/call'
import type { JobKind } from '@almanac/records/job-kind'
import { bedRenewingKinds } from '@almanac/records/job-kind'
import { openJobStates } from '@almanac/records/job-state'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { VisitState } from '@almanac/records/visit-state'
import { notFound } from '@almanac/runtime/errors'
import { dayOf } from '../days.ts'
import { inCompany, type Scope } from '../in-company.ts'
import { BED_FACTS, bedFacts } from './bed-facts.ts'
import { jobFacts } from './job-rows.ts'
import { readTurns } from './job-turns.ts'
import { NOBODY_TO_CALL, readWhomToCall } from './whom-to-call.ts'

/** One job with its site, bed, forecast and every visit so far, the latest first. */
export async function readJob(scope: Pick<Scope, 'companyId'>, jobId: string, nameOf: (personId: string) => string | null = () => null) {
  return inCompany(scope, async (tx) => {
    const job = await tx.job.findUnique({
      where: { companyId_id: { companyId: scope.companyId, id: jobId } },
      include: {
        site: true,
        softener: { select: { label: true } },
        turns: { select: { dueDay: true, agreement: { select: { kind: true } } }, take: 1 },
        followedBy: {
          where: { state: { not: 'called-off' } },
          select: { id: true, kind: true, afterLeastDays: true },
          orderBy: { id: 'asc' },
        },
        bed: { include: { ...BED_FACTS, forecast: true } },
        visits: {
          orderBy: { startsAt: 'desc' },
          include: {
            crewDay: { select: { name: true, day: true } },
            assignments: { select: { released: true, colleague: { select: { name: true } } } },
          },
        },
      },
    })
    if (!job) throw notFound('job')
    const forecast = job.bed?.forecast
    const before = (await readTurns(tx, scope.companyId, [job])).get(job.id)
    const [turn] = job.turns
    return {
      ...jobFacts(job),
      street: job.site.street,
      whom: (await readWhomToCall(tx, scope.companyId, [job.siteId])).get(job.siteId) ?? NOBODY_TO_CALL,
      accessNotes: job.site.accessNotes,
      softenerId: job.softenerId,
      softenerLabel: job.softener?.label ?? null,
      notes: job.notes,
      askedFor: askedFor(job.askedFor),
      stateReason: job.stateReason,
      createdAt: job.createdAt.toISOString(),
      closedDay: dayOf(job.closedDay),
      follows: before ? { ...before, kind: before.kind as JobKind } : null,
      turn: turn ? { kind: turn.agreement.kind as AgreementKind, dueDay: dayOf(turn.dueDay) } : null,
      followedBy: job.followedBy.map((one) => ({ jobId: one.id, kind: one.kind as JobKind, leastDays: one.afterLeastDays ?? 0 })),
      forecast: forecast
        ? {
            asOfDay: dayOf(forecast.asOfDay),
            due10Day: dayOf(forecast.due10Day),
            due50Day: dayOf(forecast.due50Day),
            due90Day: dayOf(forecast.due90Day),
            chance3Months: forecast.chance3Months,
            chance12Months: forecast.chance12Months,
            refusal: forecast.refusal,
          }
        : null,
      visits: job.visits.map((visit) => ({
        id: visit.id,
        version: visit.version,
        state: visit.state as VisitState,
        outcome: visit.outcome as VisitOutcome | null,
        startsAt: visit.startsAt.toISOString(),
        endsAt: visit.endsAt.toISOString(),
        crewDayId: visit.crewDayId,
        day: dayOf(visit.crewDay.day),
        crewName: visit.crewDay.name,
        // A visit that moved to another crew keeps the first crew's released rows; those people do not come.
        people: [
          ...new Set(visit.assignments.filter((one) => visit.state === 'called-off' || !one.released).map((one) => one.colleague.name)),
        ]
          .sort()
          .concat(besideOf(visit.closeOut)?.others || []),
        notes: visit.notes,
        extra: besideOf(visit.closeOut)?.extra ?? null,
        promised: visit.promisedBy
          ? {
              from: visit.arriveFrom?.toISOString() ?? visit.startsAt.toISOString(),
              until: visit.arriveUntil?.toISOString() ?? visit.startsAt.toISOString(),
              by: visit.promisedBy as PromiseWay,
              person: visit.promisedPersonId && nameOf(visit.promisedPersonId),
            }
          : null,
      })),
    }
  })
}

/** What was told beside the outcome; close-outs of earlier releases tell nothing. */
const besideOf = (closeOut: unknown) => (closeOut as { beside?: BesideVisit } | null)?.beside

/** The softeners and present beds of a site, each with its open rebed if there is one: what a new job can be for. */
export async function readJobChoices(scope: Pick<Scope, 'companyId'>, siteId: string) {
  return inCompany(scope, async (tx) => {
    const site = await tx.site.findUnique({
      where: { companyId_id: { companyId: scope.companyId, id: siteId } },
      include: {
        softeners: {
          where: { archivedAt: null },
          orderBy: { label: 'asc' },
          include: {
            tanks: {
              where: { archivedAt: null },
              orderBy: { position: 'asc' },
              include: {
                beds: {
                  where: { endedLatest: null, archivedAt: null },
                  include: {
                    ...BED_FACTS,
                    jobs: {
                      where: { kind: { in: [...bedRenewingKinds] }, state: { in: [...openJobStates] } },
                      select: { id: true },
                    },
                  },
                },
              },
            },
          },
        },
      },
    })
    if (!site) throw notFound('site')
    return {
      siteId: site.id,
      siteLabel: site.label,
      town: site.town,
      softeners: site.softeners.map((softener) => ({
        id: softener.id,
        label: softener.label,
        beds: softener.tanks.flatMap((tank) => tank.beds.map((bed) => ({ ...bedFacts(bed), openRebedJobId: bed.jobs[0]?.id ?? null }))),
      })),
    }
  })
}
