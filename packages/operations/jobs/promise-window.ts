import type { PromiseWindow } from '@almanac/contract/windows'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { companyFacts } from '../shared/company-facts.ts'
import { lockVisitAt } from './lock-job.ts'
import { madeNow, promisedTimes, renewPromise } from './promises.ts'

/** Writes down what was promised by telephone: that the crew of a booked visit comes between two clock times of its day. It stands in the place of an earlier promise. */
export async function promiseWindow(scope: Scope & { personId: string }, input: PromiseWindow) {
  return runCommand(scope, 'jobs.promise-window', input, async (tx, command) => {
    const { companyId } = scope
    const { visitId, version, from, until } = input
    const { visit, job } = await lockVisitAt(tx, companyId, visitId, version, { from, until })
    if (visit.state !== 'booked')
      throw new AppError('conflict', 'Only a visit that hasn’t started can be promised. Nothing was changed; look at the job again.')
    const promised = promisedTimes(visit.startsAt, { from, until }, await companyFacts(tx, companyId))
    await renewPromise(tx, command, job.id)
    const changed = await tx.visit.update({
      where: { companyId_id: { companyId, id: visitId } },
      data: { ...promised, ...madeNow(command), version: { increment: 1 } },
    })
    await command.audit('promised', 'visit', visitId, {
      from: promised.arriveFrom.toISOString(),
      until: promised.arriveUntil.toISOString(),
    })
    await command.announce('visit', visitId, changed.version)
    return { visitId, version: changed.version }
  })
}
