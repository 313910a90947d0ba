import { expect, type Page } from '@playwright/test'

/** Starts the visit being looked at, in the words of the page: another day's or another crew's is asked about first. */
export async function startVisit(page: Page, start: RegExp | string = 'Start visit', next: RegExp | string = 'Next step'): Promise<void> {
  await page.getByRole('button', { name: start }).click()
  const asked = page.getByRole('dialog')
  const steps = page.getByRole('button', { name: next, exact: true })
  await expect(asked.or(steps).first()).toBeVisible()
  if (await asked.isVisible()) await asked.getByRole('button', { name: start }).click()
}
