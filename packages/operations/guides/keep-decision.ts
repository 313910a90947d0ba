import type { KeepDecision } from '@almanac/contract/bed-choice'
import type { Scope } from '@almanac/database/in-company'
import { readBedPlan } from '@almanac/database/read/bed-plan'
import { runCommand } from '@almanac/database/run-command'
import { AppError } from '@almanac/runtime/errors'
import { newId } from '@almanac/runtime/ids'
import { ownerOrFirm } from '@almanac/softener/choice/owner-or-firm'
import { ownerQuestion } from '@almanac/softener/choice/owner-question'
import { wordsIn } from '@almanac/words/words-in'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'
import { rebedFirm } from '../shared/rebed-firm.ts'

/**
 * Keeps whether an owner may do a rebed alone, with what was answered, why, and what the law says. It is worked out here from the record: where that says something else
 * than the page did, nothing is kept.
 */
export async function keepDecision(scope: Scope & { personId: string }, input: KeepDecision): Promise<{ decisionId: string }> {
  const { bedId, told, verdict, law } = input
  const { bed, water } = await readBedPlan(scope, bedId)
  return runCommand(scope, 'guides.keep-decision', input, async (tx, command) => {
    const { companyId, personId } = scope
    const display = await companyFacts(tx, companyId)
    const firm = rebedFirm(await firmFigures(tx, companyId), display)
    const answer = ownerOrFirm(ownerQuestion(bed, water.source, told, firm), wordsIn(display.locale, 'ownerRebed'))
    if (answer.verdict !== verdict)
      throw new AppError('conflict', 'The record changed since you saw this. Nothing was kept; look at the answer again.')
    if (verdict === 'owner-with-helper' && !law)
      throw new AppError('invalid', 'Say what the law is here, and who told you. Nothing was kept.', { field: 'law' })
    const id = newId()
    const reasons = answer.grounds.map((one) => one.words)
    await tx.ownerDecision.create({
      data: { companyId, id, bedId, personId, at: command.at, verdict, answers: told, reasons, law: law || null },
    })
    await command.audit('owner decision kept', 'bed', bedId, { decisionId: id, verdict })
    await command.announce('bed', bedId)
    return { decisionId: id }
  })
}
