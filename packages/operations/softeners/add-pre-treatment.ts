import type { AddPreTreatment } from '@almanac/contract/site-commands'
import { dateOf } from '@almanac/database/days'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { notFound } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { companyFacts } from '../shared/company-facts.ts'
import { sourceWords } from '../shared/read-typed-facts.ts'
import { refreshSiteForecasts } from '../shared/refresh-site-forecasts.ts'

/** Notes what stands ahead of a softener: carbon keeps the disinfectant from its beds, so they are forecast anew. */
export async function addPreTreatment(
  scope: Scope & { personId: string },
  input: AddPreTreatment,
): Promise<{ id: string; version: number }> {
  return runCommand(scope, 'softeners.add-pre-treatment', input, async (tx, command) => {
    const { companyId } = scope
    const { softenerId, kind, fromDay } = input
    const softener = await tx.softener.findFirst({ where: { companyId, id: softenerId, archivedAt: null }, select: { id: true } })
    if (!softener) throw notFound('softener')
    const { today } = await companyFacts(tx, companyId)
    const id = newId()
    await tx.preTreatment.create({
      data: { companyId, id, softenerId, kind, fromDay: dateOf(fromDay), source: sourceWords(input.source, today) },
    })
    await refreshSiteForecasts(tx, command, { softenerId })
    await command.audit('added', 'pre-treatment', id, { softenerId, kind, fromDay })
    await command.announce('softener', softenerId)
    return { id, version: 1 }
  })
}
