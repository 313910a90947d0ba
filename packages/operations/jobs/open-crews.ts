import type { OpenCrews } from '@almanac/contract/plans'
import { expectChanged } from '@almanac/database/changed-row'
import { dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import type { StoredCrews } from '@almanac/database/read/plan-crews'
import { runCommand } from '@almanac/database/run-command'
import { lockRows } from '@almanac/database/sql/lock-rows'
import { notFound } from '@almanac/runtime/errors'
import { clockOfMinute, instantAt } from '@almanac/units/calendar/zone-clock'
import { companyFacts } from '../shared/company-facts.ts'
import { refuseClash } from './check-crew.ts'
import { askedOf } from './mishap-of.ts'
import { writeSheet } from './write-sheet.ts'

/** Opens a sheet for each crew chosen of a plan, all or none: one whose people or vehicle were taken meanwhile refuses them all, with who it is. */
export async function openCrews(scope: Scope & { personId: string }, input: OpenCrews) {
  return runCommand(scope, 'jobs.open-crews', input, async (tx, command) => {
    const { companyId } = scope
    await lockRows(tx, companyId, 'plan_proposal', [input.planId])
    const plan = await tx.planProposal.findUnique({ where: { companyId_id: { companyId, id: input.planId } } })
    if (!plan || askedOf(plan.asked).kind !== 'crews') throw notFound('plan')
    const { id, version, state } = plan
    const unchanged = version === input.version && state === 'ready'
    await expectChanged(unchanged ? 1 : 0, 'plan', input.version, { state: 'accepted' }, async () => ({ id, version, state }))
    const stored = plan.proposal as unknown as StoredCrews
    const before = stored.opened ?? []
    const chosen = [...new Set(input.crews)].filter((one) => !before.includes(one))
    const { timeZone } = await companyFacts(tx, companyId)
    const day = dayOf(plan.fromDay)
    const opened: string[] = []
    for (const one of chosen) {
      const crew = stored.crews[one]
      if (!crew) throw notFound('crew of this plan')
      const people = await tx.colleague.findMany({ where: { companyId, id: { in: [...crew.handIds] } }, select: { name: true } })
      const wanted = {
        day,
        name: people
          .map((person) => person.name)
          .sort()
          .join(' and ')
          .slice(0, 80),
        colleagueIds: [...crew.handIds],
        vehicleId: crew.vanId,
        startsAt: instantAt(timeZone, day, clockOfMinute(crew.shift.from)),
        endsAt: instantAt(timeZone, day, clockOfMinute(crew.shift.to)),
      }
      await refuseClash(tx, companyId, wanted)
      opened.push((await writeSheet(tx, command, wanted)).crewDayId)
    }
    const all = [...before, ...chosen]
    const after = await tx.planProposal.update({
      where: { companyId_id: { companyId, id } },
      data: {
        state: all.length === stored.crews.length ? 'accepted' : 'ready',
        proposal: { ...stored, opened: all } as object,
        version: { increment: 1 },
      },
    })
    await command.audit('accepted', 'plan', id, { crews: chosen.length })
    await command.announce('plan', id, after.version)
    return { planId: id, version: after.version, opened }
  })
}
