import { inCompany } from '@almanac/database/in-company'
import { readBedPlan } from '@almanac/database/read/bed-plan'
import { AppError } from '@almanac/runtime/errors'
import type { OwnerTold } from '@almanac/softener/choice/owner-question'
import { type OwnerStep, ownerSheet } from '@almanac/softener/procedure/owner-sheet'
import { procedureContextOf } from '@almanac/softener/rebed/rebed-of-record'
import { wordsIn } from '@almanac/words/words-in'
import { companyFacts } from '../shared/company-facts.ts'
import { firmFigures } from '../shared/firm-figures.ts'

/** The last kept answer whether an owner may rebed a bed alone; null where nobody kept one. */
export const lastDecision = (companyId: string, bedId: string) =>
  inCompany({ companyId }, (tx) =>
    tx.ownerDecision.findFirst({
      where: { companyId, bedId },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      select: { verdict: true, answers: true },
    }),
  )

/**
 * The steps of an owner's rebed for a bed, in the language of a locale: from its record, its water and what was answered before the go. None for a bed that has come out since.
 */
export async function readSheet(companyId: string, bedId: string, locale: string): Promise<OwnerStep[]> {
  const plan = await readBedPlan({ companyId }, bedId).catch((error: unknown) => {
    if (error instanceof AppError && error.code === 'not-found') return null
    throw error
  })
  if (!plan) return []
  const decision = await lastDecision(companyId, bedId)
  const { figures, facts } = await inCompany({ companyId }, async (tx) => ({
    figures: await firmFigures(tx, companyId),
    facts: await companyFacts(tx, companyId),
  }))
  const words = {
    steps: wordsIn(locale, 'steps'),
    cautions: wordsIn(locale, 'cautions'),
    asks: wordsIn(locale, 'asks'),
    beadCondition: wordsIn(locale, 'beadCondition'),
    kit: wordsIn(locale, 'kit'),
  }
  const firm = { figures, display: { ...facts, locale }, words: words.kit }
  const context = procedureContextOf(plan.bed, plan.water, firm, { twin: plan.softener?.twin ?? null })
  return ownerSheet(context, (decision?.answers ?? {}) as Partial<OwnerTold>, words)
}
