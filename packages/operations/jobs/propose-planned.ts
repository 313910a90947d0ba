import type { ProposePlanned } from '@almanac/contract/jobs'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { dayNumber } from '@almanac/units/calendar/calendar-day'
import { isoDay, monthStart } from '@almanac/units/calendar/day-number'
import { type Proposed, proposeRebeds } from './propose-rebeds.ts'

/**
 * Proposes the rebeds that the levelled plan gives to one month, each to be done within it: so the plan reaches the day sheets. Only of the newest plan: of one that
 * was worked out anew since it was looked at nothing is proposed.
 */
export async function proposePlanned(scope: Scope & { personId: string }, input: ProposePlanned): Promise<{ results: Proposed[] }> {
  return runCommand(scope, 'jobs.propose-planned', input, async (tx, command) => {
    const { companyId } = scope
    const newest = await tx.forecastPlan.findFirst({
      where: { companyId },
      orderBy: [{ finishedAt: 'desc' }, { id: 'desc' }],
      select: { id: true },
    })
    if (newest?.id !== input.planId) {
      if (!(await tx.forecastPlan.count({ where: { companyId, id: input.planId } }))) throw notFound('plan')
      throw new AppError('conflict', 'The plan changed since you saw it. Nothing was proposed; look at the month again.')
    }
    const first = `${input.month}-01`
    const month = dateOf(first)
    const planned = await tx.plannedRebed.findMany({ where: { companyId, planId: newest.id, month }, select: { bedId: true } })
    const days = { dueEarliest: month, dueLatest: dateOf(isoDay(monthStart(dayNumber(first), 1) - 1)) }
    const bedIds = planned.map(({ bedId }) => bedId)
    return { results: bedIds.length > 0 ? await proposeRebeds(tx, command, bedIds, () => days) : [] }
  })
}
