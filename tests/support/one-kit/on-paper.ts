import { inCompany } from '@almanac/database/in-company'
import { readBedPlan } from '@almanac/database/read/bed-plan'
import { renderRebedPlan } from '@almanac/documents/rebed-plan/render-rebed-plan'
import { firmFigures } from '@almanac/operations/shared/firm-figures'
import { kitOf } from '@almanac/softener/rebed/kit-of-record'
import { formatCutLengthIn, formatWeightLb } from '@almanac/units/format'
import { extractText, getDocumentProxy } from 'unpdf'
import { planFacts } from '../../../apps/web/server/rebed-plan.ts'
import { ENGLISH } from '../procedure-words.ts'
import { DAY } from './booked-rebeds.ts'
import type { DemoFirm } from './demo-softeners.ts'

/** The paper writes fractions in plain figures, 52 1/8, and "about" before a length that is an estimate. */
const plain = (words: string) =>
  words
    .normalize('NFKD')
    .replaceAll('⁄', '/')
    .replace(/[\s,]+/g, '')

/** Some printed plans of a firm, read back: what each says, and the tube and the weight of its bed's kit as the paper must have them. Beds whose kit refuses have none. */
export async function printedPlans({ company, bedIds }: DemoFirm): Promise<{ said: string; tube: string; weight: string }[]> {
  const scope = { companyId: company.id }
  const figures = await inCompany(scope, (tx) => firmFigures(tx, company.id))
  const printed = []
  for (const id of bedIds.filter((_, index) => index % Math.ceil(bedIds.length / 6) === 0)) {
    const facts = planFacts(await readBedPlan(scope, id), company, figures, DAY)
    const kit = kitOf(facts.bed, { figures, display: company, words: ENGLISH.kit })
    if (!kit.ok) continue
    const { text } = await extractText(await getDocumentProxy(await renderRebedPlan(facts)), { mergePages: true })
    printed.push({
      said: plain(text).replace('cuttubehereabout', 'cuttubehere'),
      tube: plain(`cut tube here ${formatCutLengthIn(kit.value.tubeLengthIn, company)}`),
      weight: plain(formatWeightLb(kit.value.loadWeightLb, company)),
    })
  }
  return printed
}
