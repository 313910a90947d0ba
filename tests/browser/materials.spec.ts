import AxeBuilder from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import { someCustomer } from '../support/head-search.ts'
import { signIn } from '../support/sign-in.ts'
import { drive, NO_NUMBER } from '../support/typed-texts.ts'

const materials = (page: Page) => page.getByRole('table', { name: 'Materials' })

test('a customer asks for salt only: set aside, packed by a list, collected, and one bag comes back', async ({ page }) => {
  test.setTimeout(120_000)
  await signIn(page, 'dispatcher')
  // The shop keeps salt.
  await page.goto('/stores')
  await page.getByRole('button', { name: 'Add an item' }).click()
  const form = page.getByRole('dialog')
  await form.getByLabel('Kind').selectOption({ label: 'Salt' })
  await form.getByLabel('Name').fill('Salt of the counter, 40 lb bag')
  await form.getByLabel('On hand now').fill('6')
  await form.getByLabel('Price').fill('8.25')
  await form.getByRole('button', { name: 'Save' }).click()
  await expect(form).toHaveCount(0)

  await page.goto('/jobs')
  const { label, customer } = await someCustomer(page)
  await page.getByRole('button', { name: 'Record a call' }).click()
  const call = page.getByRole('dialog', { name: 'Record a call' })
  await page.keyboard.type(`${label} ${customer}`)
  await expect(call.getByRole('option').first()).toBeVisible()
  await page.keyboard.press('Enter')
  await call.getByRole('radio', { name: 'Materials' }).check()
  await call.getByRole('button', { name: 'Keep call' }).click()
  await expect(page.getByRole('heading', { level: 1, name: /^Delivery at / })).toBeVisible()
  await expect(page.getByText('Nothing is set aside yet.')).toBeVisible()

  await page.getByLabel('Item').selectOption({ label: 'Salt of the counter, 40 lb bag (6 bags on hand)' })
  const quantity = page.getByLabel('How much', { exact: true })
  await drive(quantity, { ...NO_NUMBER, '99999': /99,999 .+ is unusual/ })
  await quantity.fill('8')
  await page.getByRole('button', { name: 'Set aside' }).click()
  await expect(materials(page).getByRole('cell', { name: 'short by 2 bags' })).toBeVisible()
  await page.getByLabel('Item').selectOption({ label: 'Salt of the counter, 40 lb bag (6 bags on hand)' })
  await quantity.fill('4')
  await page.getByRole('button', { name: 'Set the new quantity' }).click()
  await expect(materials(page).getByRole('cell', { name: 'reserved' })).toBeVisible()
  await expect(page.getByText('$33.00 by the prices in the stores.')).toBeVisible()
  expect((await new AxeBuilder({ page }).include('main').analyze()).violations).toEqual([])

  await page.getByRole('link', { name: 'Packing list' }).click()
  await expect(
    page.getByRole('table', { name: 'To pack' }).getByRole('row', { name: 'Salt of the counter, 40 lb bag 4 bags' }),
  ).toBeVisible()
  await page.getByRole('link', { name: /^Delivery at / }).click()
  await page.getByRole('button', { name: 'Collected', exact: true }).click()
  await expect(materials(page).getByRole('cell', { name: /^collected / })).toBeVisible()
  await expect(page.getByText(/^Closed on /)).toBeVisible()

  await page.getByRole('button', { name: /^Came back/ }).click()
  const back = page.getByRole('dialog').getByLabel('How much came back', { exact: true })
  await drive(back, { ...NO_NUMBER, '99999': /99,999 .+ is unusual/ })
  await back.fill('1')
  await page.getByRole('dialog').getByRole('button', { name: 'Save' }).click()
  await expect(materials(page).getByRole('cell', { name: /; 1 bag came back$/ })).toBeVisible()
  await page.goto('/stores')
  const row = page.getByRole('table', { name: 'Stock items' }).getByRole('row').filter({ hasText: 'Salt of the counter' })
  // 6, less 4, and 1 again.
  await expect(row.getByRole('cell', { name: '3 bags', exact: true })).toBeVisible()
})
