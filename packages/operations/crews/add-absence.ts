import type { AddAbsence } from '@almanac/contract/crews'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { formatDay } from '@almanac/units/format-day'
import { companyFacts } from '../shared/company-facts.ts'
import { refuseBooked } from './refuse-booked.ts'

/**
 * Writes down days off of a person, or that a vehicle is off the road. Sheets that stand in those days stay, with a warning; visits booked on them are named
 * first, with what was promised, and have to be confirmed.
 */
export async function addAbsence(scope: Scope & { personId: string }, input: AddAbsence): Promise<{ id: string; version: number }> {
  const { of, subjectId, fromDay, untilDay, word } = input
  return runCommand(scope, 'crews.add-absence', input, async (tx, command) => {
    const { companyId } = scope
    if (untilDay !== null && untilDay < fromDay) {
      const company = await companyFacts(tx, companyId)
      const [from, until] = [formatDay(fromDay, company), formatDay(untilDay, company)]
      throw new AppError('invalid', `The days cannot run from ${from} to ${until}. Nothing was saved; swap the days.`)
    }
    const [colleagueId, vehicleId] = of === 'person' ? [subjectId, null] : [null, subjectId]
    const found = colleagueId
      ? await tx.colleague.count({ where: { companyId, id: colleagueId, archivedAt: null } })
      : await tx.vehicle.count({ where: { companyId, id: subjectId, archivedAt: null } })
    if (found === 0) throw notFound(of)
    if (!input.confirmed) await refuseBooked(tx, companyId, { colleagueId, vehicleId, fromDay, untilDay })
    const id = newId()
    const days = { fromDay: dateOf(fromDay), untilDay: dateOf(untilDay) }
    await tx.absence.create({ data: { companyId, id, colleagueId, vehicleId, ...days, word: word || null } })
    // Without the word: why someone is away is nobody else's business.
    await command.audit('added', 'absence', id, { colleagueId, vehicleId, fromDay, untilDay })
    await command.announce('absence', id, 1)
    return { id, version: 1 }
  })
}
