import { languageOf } from '@almanac/records/language'
import { Document, renderToBuffer } from '@react-pdf/renderer'
import { createElement } from 'react'
import { fileNameOf } from '../print/file-name.ts'
import { printable } from '../print/printable-text.ts'
import { FirstPage } from './first-page.tsx'
import { makePlan } from './make-plan.ts'
import type { PlanFacts } from './plan-facts.ts'
import { StepPages } from './step-pages.tsx'

/** The rebed plan as a PDF of three sheets, US letter or A4 by the company's region: drawing, facts and kit; then the steps. Black on white, for any printer. */
export async function renderRebedPlan(facts: PlanFacts): Promise<Uint8Array<ArrayBuffer>> {
  const plan = makePlan(facts)
  const title = printable(plan.words('title', { site: facts.site.label }))
  const sheets = [createElement(FirstPage, { key: 1, plan }), createElement(StepPages, { key: 2, plan })]
  const buffer = await renderToBuffer(
    createElement(Document, { title, author: printable(facts.firmName), language: languageOf(facts.display.locale) }, ...sheets),
  )
  return new Uint8Array(buffer)
}

/** "rebed-plan-orchard-lane-14.pdf". */
export const planFileName = (siteLabel: string): string => fileNameOf('rebed-plan', siteLabel)
