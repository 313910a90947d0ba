import type { AddUsualItems } from '@almanac/contract/stores'
import type { Scope } from '@almanac/database/in-company'
import { runCommand } from '@almanac/database/run-command'
import { newId } from '@almanac/runtime/ids'
import { wordsIn } from '@almanac/words/words-in'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { usualItems } from './usual-items.ts'

/** Puts what a rebed usually takes on the stores' list, nothing of it on hand yet. What is there by its name, archived too, stays as it is; answers how many came. */
export async function addUsualItems(scope: Scope & { personId: string }, input: AddUsualItems): Promise<{ added: number }> {
  return runCommand(scope, 'stores.add-usual-items', input, async (tx, command) => {
    const { companyId } = scope
    const display = await companyFacts(tx, companyId)
    const usual = usualItems(await firmFigures(tx, companyId), display, wordsIn(display.locale, 'kit'))
    const there = await tx.stockItem.findMany({ where: { companyId }, select: { name: true } })
    const names = new Set(there.map((one) => one.name))
    const missing = usual.filter((one) => !names.has(one.name)).map((one) => ({ companyId, id: newId(), ...one }))
    await tx.stockItem.createMany({ data: missing })
    for (const { id, kind, unit } of missing) await command.audit('added', 'stock-item', id, { kind, unit, onHand: 0 })
    if (missing[0]) await command.announce('stock-item', missing[0].id)
    return { added: missing.length }
  })
}
