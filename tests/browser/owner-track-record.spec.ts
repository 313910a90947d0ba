import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test('the owner reads how good past forecasts were, and follows the worst of them to its bed', async ({ page }) => {
  // Right after the demo is loaded the worker is still looking back; the page changes by itself when it is done.
  test.setTimeout(400_000)
  await signIn(page, 'owner')
  await page.getByRole('link', { name: 'Track record' }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Track record' })).toBeVisible()
  await expect(page.getByText(/Of 100 due windows we would have given, \d+ turned out right/)).toBeVisible({ timeout: 330_000 })
  await expect(page.getByRole('table', { name: 'How far off each rule was' }).getByRole('row')).toHaveCount(5)
  await expect(page.getByText(/Your own records: [\d,]+ beds that failed among/)).toBeVisible()

  await page.getByRole('button', { name: 'Show as table' }).click()
  await expect(page.getByRole('rowheader', { name: /first \(before the early date\)/ })).toBeVisible()

  await page
    .getByText(/though on .* we gave it/)
    .first()
    .getByRole('link')
    .click()
  await expect(page).toHaveURL(/\/beds\//)
})

test('what was learned can be asked of a bed’s forecast', async ({ page }) => {
  test.setTimeout(200_000)
  await signIn(page, 'owner')
  await page.getByRole('button', { name: /^All beds/ }).click()
  const table = page.getByRole('table', { name: 'Beds that come due' })
  await expect(table.getByRole('row').nth(1)).toBeVisible()
  await table.getByRole('link').first().click()
  await expect(page.getByText(/from your own records \([\d,]+ beds that failed\)/)).toBeVisible({ timeout: 120_000 })
  await page.getByRole('button', { name: /Why these dates/ }).click()
  await expect(page.getByRole('dialog')).toContainText('Learned from')
})
