import type { Scope } from '@almanac/database/in-company'
import { readFirmFigures } from '@almanac/database/read/firm-figures'
import { readServiceReport } from '@almanac/database/read/service-report'
import { renderServiceReport } from '@almanac/documents/service-report/render-service-report'
import type { ReportFacts } from '@almanac/documents/service-report/report-facts'
import { fileStore } from '@almanac/files/file-store'
import { printedPhotograph } from '@almanac/files/printed-photograph'
import type { Language } from '@almanac/records/language'
import { mergeFigures } from '@almanac/softener/firm/merge-figures'
import { openLetterhead } from '../shared/open-letterhead.ts'
import { reportFacts } from './report-facts.ts'

/** The service report of a closed visit as a PDF, in a language; left out, in the one of whoever held the site that day. */
export async function renderReport(
  scope: Pick<Scope, 'companyId'>,
  visitId: string,
  language?: Language | null,
): Promise<{ facts: ReportFacts; pdf: Uint8Array<ArrayBuffer> }> {
  const record = await readServiceReport(scope, visitId)
  const { figures } = mergeFigures((await readFirmFigures(scope)).filter((row) => row.inUse))
  const holder = language === undefined ? record.holder : { ...record.holder, language }
  const facts = await reportFacts({ ...record, holder }, await openLetterhead(scope), figures, async (id, kind) => {
    const bytes = await fileStore().get({ companyId: scope.companyId, id })
    return bytes && kind === 'photograph' ? printedPhotograph(bytes) : bytes
  })
  return { facts, pdf: await renderServiceReport(facts) }
}
