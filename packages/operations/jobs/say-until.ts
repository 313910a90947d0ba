import type { SayUntil } from '@almanac/contract/jobs'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { dayIn, instantAt } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { lockVisitAt } from './lock-job.ts'

/**
 * Writes down until when a visit lasts, as its crew says on the telephone. Nobody else is moved by it: the day's page says who comes later then, and whom to
 * call. 409 for a visit that is over, or a time before it begins.
 */
export async function sayUntil(scope: Scope & { personId: string }, input: SayUntil): Promise<{ visitId: string; version: number }> {
  return runCommand(scope, 'jobs.say-until', input, async (tx, command) => {
    const { companyId } = scope
    const { visitId, version, until } = input
    const { visit, job } = await lockVisitAt(tx, companyId, visitId, version, { until })
    if (visit.state !== 'booked' && visit.state !== 'under-way')
      throw new AppError('conflict', 'Only a visit that isn’t over can last longer. Nothing was changed; look at the sheet again.')
    const { timeZone } = await companyFacts(tx, companyId)
    const runningUntil = until === null ? null : instantAt(timeZone, dayIn(timeZone, visit.startsAt), until)
    if (runningUntil && runningUntil <= (visit.startedAt ?? visit.startsAt))
      throw new AppError('conflict', 'That is before the visit begins. Nothing was changed; check the time.')
    const changed = await tx.visit.update({
      where: { companyId_id: { companyId, id: visitId } },
      data: { runningUntil, version: { increment: 1 } },
    })
    await command.audit('expected until', 'visit', visitId, { jobId: job.id, until: runningUntil?.toISOString() ?? null })
    await command.announce('visit', visitId, changed.version)
    return { visitId, version: changed.version }
  })
}
