import type { EmergencyKind } from '@almanac/records/procedure-ask'
import type { VisitOutcome } from '@almanac/records/visit-outcome'
import type { VisitStop } from '@almanac/records/visit-stop'
import { closeOut } from '@almanac/words/en/close-out'
import { stop as stopWords } from '@almanac/words/en/stop'
import { visit as visitWords } from '@almanac/words/en/visit'
import { expect, type Page } from '@playwright/test'
import { answerAll } from './walk-visit.ts'

const MOST_STEPS = 40
/** Through all steps, to an answer that ends the work, or to the closing form at once. */
type Way = 'to-the-end' | 'stop-and-close-out' | VisitStop

/** Walks a visit that was begun to its closing form. `happened` is what an emergency is. */
export async function walkVisit(page: Page, way: Way, happened: EmergencyKind): Promise<void> {
  const head = page.getByRole('heading', { level: 1 })
  const next = page.getByRole('button', { name: /^(Next step|Close out)$/ })
  if (way === 'stop-and-close-out') {
    await page.getByRole('button', { name: visitWords.stop }).click()
    await expect(head).toHaveText(closeOut.title)
    return
  }
  const [ask = '', answer = ''] = way === 'to-the-end' ? [] : way.split('/')
  for (let step = 0; step < MOST_STEPS; step++) {
    const title = (await head.textContent()) ?? ''
    if (title === closeOut.title) {
      expect(way, 'no step asks for the stop').toBe('to-the-end')
      return
    }
    const ends = page.locator(`main input[name="${ask}"][value="${answer}"]`)
    if (ask && (await ends.count()) > 0) return endSafely(page, () => ends.click())
    const what = page.locator(`main input[name=happened][value="${happened}"]`)
    if ((await what.count()) > 0) await what.check()
    // A number that cannot be is asked back: another one.
    for (let tried = 0; tried < 3 && (await head.textContent()) === title; tried++) {
      for (const outlet of await page
        .locator('main')
        .getByRole('textbox', { name: /outlet/i })
        .all())
        await outlet.fill('0.5')
      await answerAll(page, tried)
      await next.click()
    }
    await expect(head).not.toHaveText(title)
  }
  throw new Error('the steps do not end')
}

/** Gives an answer that ends the work, ticks what leaves the house safe, and goes on to the closing form. */
async function endSafely(page: Page, answer: () => Promise<void>): Promise<void> {
  const head = page.getByRole('heading', { level: 1 })
  await answer()
  await expect(head).toHaveText(/^Stop: /)
  await expect(page.getByText('Closes as: ')).toBeVisible()
  for (const box of await page.locator('main').getByRole('checkbox').all()) if (!(await box.isChecked())) await box.check()
  await page.getByRole('button', { name: 'Close out', exact: true }).click()
  await expect(head).toHaveText(closeOut.title)
}

/** What the closing form asks to be ticked for an outcome. */
const TICKS = [
  closeOut.bypassProven,
  closeOut.pressureZero,
  closeOut.backInService,
  stopWords['do/left-in-bypass'],
  stopWords['do/customer-told'],
]

/** Chooses how the visit ended, gives what that outcome asks for on this page and finishes; what is still missing is the error. */
export async function finishClosing(page: Page, outcome: VisitOutcome, reason: string): Promise<void> {
  const main = page.locator('main')
  await main.locator(`input[name=outcome][value="${outcome}"]`).check()
  const fill = async (label: string, text: string) => {
    const field = main.getByLabel(label, { exact: true })
    if ((await field.count()) > 0 && (await field.inputValue()) === '') await field.fill(text)
  }
  const choose = async (label: string, value: string) => {
    const field = main.getByLabel(label, { exact: true })
    if ((await field.count()) > 0 && (await field.inputValue()) === '') await field.selectOption(value)
  }
  await fill(closeOut.found, reason)
  await choose(closeOut.whyEnded, 'worn')
  await fill(closeOut.evidence, 'seen on site')
  await choose(closeOut.resin, 'gel-10')
  const isFilled = (await main.getByLabel(closeOut.resin, { exact: true }).count()) > 0
  if (isFilled && (await main.getByRole('button', { name: /^Take out/ }).count()) === 0)
    await main.getByLabel(closeOut.addPart, { exact: true }).selectOption({ index: 1 })
  // Last: what is to be ticked follows from the bed as well.
  for (const label of TICKS) {
    const box = main.getByRole('checkbox', { name: label })
    if ((await box.count()) > 0 && !(await box.isChecked())) await box.check()
  }
  await page.getByRole('button', { name: closeOut.finish }).click()
  const missing = page.getByRole('alert').filter({ hasText: closeOut.missing })
  const closed = page.getByText(/^Closed out/)
  await expect(missing.or(closed).first()).toBeVisible({ timeout: 30_000 })
  if (await missing.isVisible()) throw new Error(`${outcome} can’t be reached: ${await missing.textContent()}`)
}
