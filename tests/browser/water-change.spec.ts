import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test('a town that goes to chloramine moves the forecasts of its beds, visibly', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/water')
  await page.getByRole('link', { name: 'Kestrel Ridge supply' }).click()
  await page.getByRole('button', { name: 'Write a change' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel('From', { exact: false }).first().fill('2021-03-01')
  await dialog.getByLabel('Disinfectant').selectOption('chloramine')
  await dialog
    .getByLabel(/^Residual as Cl₂/)
    .first()
    .fill('3.1')
  await dialog
    .getByLabel(/^Hardness as CaCO₃/)
    .first()
    .fill('23')
  await dialog.getByLabel('From whom').fill('letter of the waterworks')
  await dialog.getByRole('button', { name: 'Save and forecast again' }).click()
  await expect(page.getByText(/beds are being forecast again/)).toBeVisible()
  await expect(page.getByText(/beds moved, \d+ of them earlier/).first()).toBeVisible({ timeout: 20_000 })
})

test('a hardness that cannot be right is refused with a sentence, and nothing typed is lost', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/water')
  await page.getByRole('link', { name: 'Kestrel Ridge supply' }).click()
  await page.getByRole('button', { name: 'Write a change' }).click()
  const dialog = page.getByRole('dialog')
  await dialog
    .getByLabel(/^Hardness as CaCO₃/)
    .first()
    .fill('hard')
  await dialog.getByLabel('From whom').fill('a call')
  await dialog.getByRole('button', { name: 'Save and forecast again' }).click()
  await expect(dialog.getByText(/does not begin with a number/)).toBeVisible()
  await expect(dialog.getByLabel('From whom')).toHaveValue('a call')
})
