import type { ChangeFigureInput } from '@almanac/contract/firm'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import { setFigure } from '@almanac/softener/firm/read-figure'
import { packOf } from '@almanac/units/price-packs'
import { checkAmounts } from '../shared/check-amounts.ts'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { figureRow, refuseFigure, refuseStale, updateFigure } from './figure-row.ts'

/**
 * Sets a figure of the firm's own in the place of a usual one, with the reason. `version` is the one the screen saw, 0 where the firm had
 * none: of two who set it at once the second gets a conflict with both values. A value that no calculation can use is refused, and an unusual price without a reason.
 */
export async function changeFigure(scope: Scope & { personId: string }, input: ChangeFigureInput) {
  const { companyId } = scope
  const { key, version, value } = input
  const note = input.note || null
  return runCommand(scope, 'firm.change-figure', input, async (tx, command) => {
    const set = setFigure(await firmFigures(tx, companyId), key, value)
    if (!set.ok) refuseFigure(set.reason)
    const { unitSystem, currency } = await companyFacts(tx, companyId)
    const pack = packOf(key, unitSystem)
    if (pack && typeof value === 'number')
      checkAmounts(
        { value: { kind: pack.rule(currency), value: value / pack.keptPer(currency), unit: currency } },
        note ? { value: note } : undefined,
      )
    const before = await figureRow(tx, companyId, key)
    const id = before?.id ?? newId()
    const sent = { value, note }
    if (before || version > 0) await updateFigure(tx, { companyId, key, version }, { value, note, archivedAt: null }, sent)
    else {
      const { count } = await tx.firmFigure.createMany({ data: [{ companyId, id, key, value, note }], skipDuplicates: true })
      if (count === 0) await refuseStale(tx, companyId, key, version, sent)
    }
    const from = before && !before.archivedAt ? before.value : null
    await command.audit('changed', 'firm-figure', id, { field: key, from, to: value, note })
    await command.announce('firm-figure', id, version + 1)
    return { id, key, version: version + 1 }
  })
}
