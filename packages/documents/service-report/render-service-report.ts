import { languageOf } from '@almanac/records/language'
import { Document, renderToBuffer } from '@react-pdf/renderer'
import { createElement } from 'react'
import { fileNameOf } from '../print/file-name.ts'
import { printable } from '../print/printable-text.ts'
import type { ReportFacts } from './report-facts.ts'
import { reportLines } from './report-lines.ts'
import { ReportPage } from './report-page.tsx'

/** The service report of a visit as a PDF, in the customer's language, on the company's paper. */
export async function renderServiceReport(facts: ReportFacts): Promise<Uint8Array<ArrayBuffer>> {
  const { head, display } = facts
  const title = printable(reportLines(facts).title)
  const language = languageOf(display.locale)
  const page = createElement(ReportPage, { facts })
  return new Uint8Array(await renderToBuffer(createElement(Document, { title, author: printable(head.firmName), language }, page)))
}

/** "service-report-orchard-lane-14-2026-12-03.pdf". */
export const reportFileName = ({ site, day }: Pick<ReportFacts, 'site' | 'day'>): string =>
  fileNameOf('service-report', `${site.label} ${day}`)
