import type { PlanPage } from '@almanac/contract/plans'
import type { JobKind } from '@almanac/records/job-kind'
import { clockOfMinute } from '@almanac/units/calendar/zone-clock'
import type { Tx } from '../client.ts'

/** Who goes with whom, as a plan keeps it. */
export type StoredCrews = {
  crews: { handIds: string[]; vanId: string; shift: { from: number; to: number }; jobIds: string[] }[]
  spareIds: string[]
  tried: number
  opened?: number[]
}

/** The crews that a plan formed, by the names of today; a job that is gone meanwhile is left out. */
export async function readFormedCrews(tx: Tx, companyId: string, stored: StoredCrews): Promise<NonNullable<PlanPage['crews']>> {
  const { crews, spareIds, tried, opened = [] } = stored
  const people = new Map(
    (await tx.colleague.findMany({ where: { companyId }, select: { id: true, name: true } })).map((one) => [one.id, one.name]),
  )
  const vehicles = new Map(
    (await tx.vehicle.findMany({ where: { companyId }, select: { id: true, name: true } })).map((one) => [one.id, one.name]),
  )
  const jobs = await tx.job.findMany({
    where: { companyId, id: { in: crews.flatMap((crew) => crew.jobIds) } },
    select: { id: true, kind: true, site: { select: { label: true, town: true } } },
  })
  const jobOf = new Map(jobs.map((job) => [job.id, job]))
  const nameOf = (id: string) => people.get(id) ?? 'Somebody who left'
  return {
    formed: crews.map((crew, at) => ({
      people: crew.handIds.map((id) => ({ id, name: nameOf(id) })),
      vehicle: { id: crew.vanId, name: vehicles.get(crew.vanId) ?? 'A vehicle that is gone' },
      from: clockOfMinute(crew.shift.from),
      until: clockOfMinute(crew.shift.to),
      jobs: crew.jobIds.flatMap((jobId) => {
        const job = jobOf.get(jobId)
        return job ? [{ jobId, kind: job.kind as JobKind, siteLabel: job.site.label, town: job.site.town }] : []
      }),
      opened: opened.includes(at),
    })),
    spare: spareIds.map(nameOf).sort(),
    tried,
  }
}
