import type { StartPlan } from '@almanac/contract/plans'
import { dateOf, dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { addDays } from '@almanac/units/calendar/calendar-day'
import { dayIn } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'

/** Asks the worker for a plan of some days, or for a way round a mishap; the page shows it when it is ready. */
export async function startPlan(scope: Scope & { personId: string }, input: StartPlan): Promise<{ planId: string }> {
  return runCommand(scope, 'jobs.start-plan', input, async (tx, command) => {
    const { companyId, personId } = scope
    const { asked } = input
    const { timeZone } = await companyFacts(tx, companyId)
    const today = dayIn(timeZone, command.at)
    let { fromDay } = input
    if (fromDay < today) fromDay = today
    if (asked.kind !== 'week' && asked.kind !== 'crews') {
      const sheet = await tx.crewDay.findUnique({
        where: { companyId_id: { companyId, id: asked.crewDayId } },
        select: { day: true, members: { select: { colleagueId: true } } },
      })
      if (!sheet) throw notFound('day sheet')
      if (dayOf(sheet.day) < today) throw new AppError('conflict', 'That day is over. Nothing was planned.')
      fromDay = dayOf(sheet.day)
      if (asked.kind === 'fewer-people') {
        const on = sheet.members.map((one) => one.colleagueId)
        if (asked.missingIds.some((id) => !on.includes(id))) throw notFound('person')
        if (asked.missingIds.length === 0) throw new AppError('invalid', 'Say who is missing from the crew. Nothing was planned.')
        if (on.every((id) => asked.missingIds.includes(id)))
          throw new AppError('conflict', 'Nobody would be left on that sheet. Choose “Nobody”; nothing was planned.')
      }
      if (asked.kind === 'other-vehicle' && asked.vehicleId) {
        const vehicles = await tx.vehicle.count({ where: { companyId, id: asked.vehicleId, archivedAt: null } })
        if (vehicles === 0) throw notFound('vehicle')
      }
    }
    const planId = newId()
    const untilDay = addDays(fromDay, input.days - 1)
    const days = { fromDay: dateOf(fromDay), untilDay: dateOf(untilDay) }
    const row = { companyId, id: planId, kind: asked.kind, asked, state: 'running', createdAt: command.at, createdBy: personId }
    await tx.planProposal.create({ data: { ...row, ...days } })
    await command.audit('started', 'plan', planId, { kind: asked.kind, fromDay, untilDay })
    await command.announce('plan', planId, 1)
    await command.enqueue('work-out-plan', { planId })
    return { planId }
  })
}
