import { closeClients } from '@almanac/database/client'
import { inCompany } from '@almanac/database/in-company'
import { readBedPlan } from '@almanac/database/read/bed-plan'
import { renderRebedPlan } from '@almanac/documents/rebed-plan/render-rebed-plan'
import { firmFigures } from '@almanac/operations/shared/firm-figures'
import { kitOf } from '@almanac/softener/rebed/rebed-of-record'
import { formatCutLengthIn, formatWeightLb } from '@almanac/units/format'
import { extractText, getDocumentProxy } from 'unpdf'
import { afterAll, expect, test, vi } from 'vitest'
import { DAY } from '../../../tests/support/one-kit/booked-rebeds.ts'
import { loadDistinctSofteners } from '../../../tests/support/one-kit/demo-softeners.ts'
import { ENGLISH } from '../../../tests/support/procedure-words.ts'
import { planFacts } from './rebed-plan.ts'

// Next's own guard, which throws outside a server bundle.
vi.mock('server-only', () => ({}))
afterAll(closeClients)

/** The paper writes fractions in plain figures, 52 1/8, and "about" before a length that is an estimate. */
const plain = (words: string) =>
  words
    .normalize('NFKD')
    .replaceAll('⁄', '/')
    .replace(/[\s,]+/g, '')

test('the printed plan, read back, says the same tube and weights as the kit', { timeout: 200_000 }, async () => {
  for (const { company, bedIds } of await loadDistinctSofteners()) {
    const scope = { companyId: company.id }
    const figures = await inCompany(scope, (tx) => firmFigures(tx, company.id))
    const picked = bedIds.filter((_, index) => index % Math.ceil(bedIds.length / 6) === 0)
    let read = 0
    for (const id of picked) {
      const facts = planFacts(await readBedPlan(scope, id), company, figures, DAY)
      const kit = kitOf(facts.bed, { figures, display: company, words: ENGLISH.kit })
      if (!kit.ok) continue
      const { text } = await extractText(await getDocumentProxy(await renderRebedPlan(facts)), { mergePages: true })
      const said = plain(text).replace('cuttubehereabout', 'cuttubehere')
      expect(said).toContain(plain(formatWeightLb(kit.value.loadWeightLb, company)))
      expect(said).toContain(plain(`cut tube here ${formatCutLengthIn(kit.value.tubeLengthIn, company)}`))
      read++
    }
    expect(read).toBeGreaterThan(2)
  }
})
