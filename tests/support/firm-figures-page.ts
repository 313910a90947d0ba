import { expect, type Page } from '@playwright/test'

/** The line of a figure on the page of the firm's figures. */
export const figureLine = (page: Page, name: string) =>
  page
    .getByRole('listitem')
    .filter({ has: page.getByText(name, { exact: true }) })
    .first()

/** Puts a figure of the firm back to the usual one, where it is not: the tests after this one count with it. */
export async function resetFigure(page: Page, name: string): Promise<void> {
  await page.goto('/firm')
  await expect(figureLine(page, name)).toBeVisible()
  const back = page.getByRole('button').and(page.getByLabel(new RegExp(`^(Reset to default|Remove): ${name}$`)))
  if ((await back.count()) === 0) return
  await back.click()
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^(Reset to default|Remove)$/ })
    .click()
  await expect(back).toHaveCount(0)
}
