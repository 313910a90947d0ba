import { askedFor } from '@almanac/records/asked-for'
import type { JobKind } from '@almanac/records/job-kind'
import type { JobState } from '@almanac/records/job-state'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { VisitState } from '@almanac/records/visit-state'
import type { Tx } from '../client.ts'
import { dayOf } from '../days.ts'
import type { Prisma } from '../generated/client.ts'
import { BED_FACTS, bedFacts } from './bed-facts.ts'
import { JOB_VALVES, SITE_HOURS, siteHours, valveCardIds } from './job-rows.ts'

/** Day sheets with their people, vehicle and visits, by day and name. Visits that were called off are left out. */
export async function sheetRows(tx: Tx, companyId: string, where: Prisma.CrewDayWhereInput) {
  const sheets = await tx.crewDay.findMany({
    where: { ...where, companyId },
    orderBy: [{ day: 'asc' }, { name: 'asc' }, { id: 'asc' }],
    include: {
      vehicle: true,
      members: { include: { colleague: { select: { name: true } } } },
      visits: {
        where: { state: { not: 'called-off' } },
        orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
        include: {
          job: {
            include: {
              site: {
                select: {
                  label: true,
                  street: true,
                  accessNotes: true,
                  town: true,
                  latitude: true,
                  longitude: true,
                  postcode: true,
                  ...SITE_HOURS,
                },
              },
              bed: { include: BED_FACTS },
              softener: JOB_VALVES,
            },
          },
        },
      },
    },
  })
  return sheets.map((sheet) => ({
    id: sheet.id,
    version: sheet.version,
    day: dayOf(sheet.day),
    name: sheet.name,
    members: sheet.members
      .map((member) => ({ colleagueId: member.colleagueId, name: member.colleague.name }))
      .sort((a, b) => a.name.localeCompare(b.name)),
    vehicle: sheet.vehicle
      ? { id: sheet.vehicle.id, name: sheet.vehicle.name, volumeFt3: sheet.vehicle.volumeFt3, weightLb: sheet.vehicle.weightLb }
      : null,
    startsAt: sheet.startsAt.toISOString(),
    endsAt: sheet.endsAt.toISOString(),
    notes: sheet.notes,
    visits: sheet.visits.map((visit) => ({
      id: visit.id,
      version: visit.version,
      jobId: visit.jobId,
      jobVersion: visit.job.version,
      jobState: visit.job.state as JobState,
      kind: visit.job.kind as JobKind,
      state: visit.state as VisitState,
      outcome: visit.outcome as VisitOutcome | null,
      startedAt: visit.startedAt?.toISOString() ?? null,
      closedAt: visit.closedAt?.toISOString() ?? null,
      runningUntil: visit.runningUntil?.toISOString() ?? null,
      arriveFrom: visit.arriveFrom?.toISOString() ?? null,
      arriveUntil: visit.arriveUntil?.toISOString() ?? null,
      startsAt: visit.startsAt.toISOString(),
      endsAt: visit.endsAt.toISOString(),
      siteId: visit.job.siteId,
      siteLabel: visit.job.site.label,
      street: visit.job.site.street,
      town: visit.job.site.town,
      accessNotes: visit.job.site.accessNotes,
      coordinates: { latitude: visit.job.site.latitude, longitude: visit.job.site.longitude, postcode: visit.job.site.postcode },
      siteHours: siteHours(visit.job.site),
      crewSize: visit.job.crewSize,
      valveCardIds: valveCardIds(visit.job.softener, visit.job.bed?.tankId ?? null),
      notes: visit.job.notes,
      askedFor: askedFor(visit.job.askedFor),
      bed: visit.job.bed ? bedFacts(visit.job.bed) : null,
    })),
  }))
}

export type SheetRow = Awaited<ReturnType<typeof sheetRows>>[number]
