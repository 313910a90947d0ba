import type { EndPreTreatment } from '@almanac/contract/site-commands'
import { expectChanged } from '@almanac/database/changed-row'
import { dateOf, dayOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { AppError, notFound } from '@almanac/runtime/errors'
import { formatDay } from '@almanac/units/format-day'
import { companyFacts } from '../shared/company-facts.ts'
import { refreshSiteForecasts } from '../shared/refresh-site-forecasts.ts'

/** Notes that a pre-treatment was taken out on a day; what it kept from the beds until then stays in their history. */
export async function endPreTreatment(
  scope: Scope & { personId: string },
  input: EndPreTreatment,
): Promise<{ id: string; version: number }> {
  const { preTreatmentId: id, version, toDay } = input
  return runCommand(scope, 'softeners.end-pre-treatment', input, async (tx, command) => {
    const { companyId } = scope
    const before = await tx.preTreatment.findFirst({ where: { companyId, id, archivedAt: null } })
    if (!before) throw notFound('pre-treatment')
    const fromDay = dayOf(before.fromDay)
    if (fromDay !== null && toDay < fromDay) {
      const company = await companyFacts(tx, companyId)
      const [came, left] = [formatDay(fromDay, company), formatDay(toDay, company)]
      throw new AppError('invalid', `It was put in on ${came}, so it can’t have been taken out on ${left}. Nothing was saved.`, {
        field: 'toDay',
      })
    }
    const { count } = await tx.preTreatment.updateMany({
      where: { companyId, id, version },
      data: { toDay: dateOf(toDay), version: { increment: 1 } },
    })
    await expectChanged(count, 'pre-treatment', version, { toDay }, async () => ({ version: before.version, toDay: dayOf(before.toDay) }))
    await refreshSiteForecasts(tx, command, { softenerId: before.softenerId })
    await command.audit('ended', 'pre-treatment', id, { toDay })
    await command.announce('softener', before.softenerId)
    return { id, version: version + 1 }
  })
}
