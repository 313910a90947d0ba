import type { InspectBed } from '@almanac/contract/beds'
import { dateOf, dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { convertPressure } from '@almanac/units/pressure'
import { checkAmounts } from '../shared/check-amounts.ts'
import { companyFacts } from '../shared/company-facts.ts'
import { checkBedDays, sourceWords } from '../shared/read-typed-facts.ts'

/** Keeps what was seen or measured of a bed. It moves the bed's forecast, and the sample of a bed taken out those of its supply. A bed that worked that day counts as last seen then. */
export async function inspectBed(scope: Scope & { personId: string }, input: InspectBed): Promise<{ inspectionId: string }> {
  const { capacityShare, moistureShare, pressureDrop, why } = input
  const percent = (kind: 'capacityShare' | 'moistureShare', share: number | null) =>
    share === null ? null : { kind, value: share * 100, unit: '%' }
  checkAmounts(
    {
      capacityShare: percent('capacityShare', capacityShare),
      moistureShare: percent('moistureShare', moistureShare),
      pressureDrop: pressureDrop && { kind: 'pressureDrop', ...pressureDrop },
    },
    why,
  )
  return runCommand(scope, 'softeners.inspect-bed', input, async (tx, command) => {
    const { companyId } = scope
    const { bedId, day } = input
    const bed = await tx.bed.findFirst({ where: { companyId, id: bedId, archivedAt: null } })
    if (!bed) throw notFound('bed')
    const company = await companyFacts(tx, companyId)
    if (day > company.today)
      throw new AppError('invalid', 'The inspection date is in the future. Nothing was saved; check the day.', { field: 'day' })
    const from = sourceWords('measured', day)
    const inspectionId = newId()
    await tx.inspection.create({
      data: {
        companyId,
        id: inspectionId,
        bedId,
        day: dateOf(day),
        beadCondition: input.beadCondition,
        capacityShare,
        moistureShare,
        pressureDropPsi: pressureDrop && convertPressure(pressureDrop.value, pressureDrop.unit, 'psi'),
        notes: [input.notes, ...Object.values(why ?? {})].filter(Boolean).join('\n') || null,
        source: 'inspection',
      },
    })
    const seen = dayOf(bed.lastSeenDay)
    const seenLater = input.working && (seen === null || seen < day)
    if (seenLater) {
      checkBedDays({ beganEarliest: dayOf(bed.beganEarliest), lastSeenDay: day, endedLatest: dayOf(bed.endedLatest), company })
      await tx.bed.update({
        where: { companyId_id: { companyId, id: bedId } },
        data: {
          lastSeenDay: dateOf(day),
          factSources: { ...(bed.factSources as Record<string, string>), lastSeenDay: from },
          version: { increment: 1 },
        },
      })
    }
    await command.audit('inspected', 'bed', bedId, { inspectionId, day, working: input.working })
    await command.announce('bed', bedId)
    await command.enqueue('forecast-beds', { bedIds: [bedId], cause: 'edit' })
    return { inspectionId }
  })
}
