import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test('a town that goes to chloramine moves the forecasts of its beds, visibly', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/water')
  await page.getByRole('link', { name: 'Kestrel Ridge supply' }).click()
  await page.getByRole('button', { name: 'Record a change' }).click()
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
  await dialog.getByLabel('Source').fill('letter of the waterworks')
  await dialog.getByRole('button', { name: 'Save and forecast again' }).click()
  await expect(page.getByText(/beds are being forecast again/)).toBeVisible()
  await expect(page.getByText(/beds moved, \d+ of them earlier/).first()).toBeVisible({ timeout: 20_000 })

  // The next letter tells of the disinfectant alone: the hardness written before it goes on.
  await page.getByRole('button', { name: 'Record a change' }).click()
  await dialog.getByLabel('From', { exact: false }).first().fill('2022-03-01')
  await dialog.getByLabel('Disinfectant').selectOption('free-chlorine')
  await expect(dialog.getByText('Blank: as before, 23 gpg')).toBeVisible()
  await dialog.getByLabel('Iron not known').check()
  await dialog.getByLabel('Source').fill('second letter')
  await dialog.getByRole('button', { name: 'Save and forecast again' }).click()
  await expect(dialog).toBeHidden()
  const row = page.getByRole('row').filter({ hasText: 'second letter' })
  await expect(row).toContainText('23 gpg')
  await expect(row).toContainText('not known')
})

test('a hardness that cannot be right is refused with a sentence, and nothing typed is lost', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/water')
  await page.getByRole('link', { name: 'Kestrel Ridge supply' }).click()
  await page.getByRole('button', { name: 'Record a change' }).click()
  const dialog = page.getByRole('dialog')
  await dialog
    .getByLabel(/^Hardness as CaCO₃/)
    .first()
    .fill('hard')
  await dialog.getByLabel('Source').fill('a call')
  await dialog.getByRole('button', { name: 'Save and forecast again' }).click()
  await expect(dialog.getByText(/“hard” is not a number/)).toBeVisible()
  await expect(dialog.getByLabel('Source')).toHaveValue('a call')
})
