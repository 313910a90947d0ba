import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

const inDays = (days: number) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10)

test('days off are written down, another’s page shows them by itself, and they are taken back', async ({ page, browser }) => {
  await signIn(page, 'dispatcher')
  await page.goto('/crews')
  const office = await browser.newContext()
  const owner = await office.newPage()
  await signIn(owner, 'owner')
  await owner.goto('/crews')

  const daysOff = page.getByRole('button', { name: /^Days off: / }).first()
  const name = ((await daysOff.getAttribute('aria-label')) ?? '').replace('Days off: ', '')
  await daysOff.click()
  // Far ahead, so that no other journey meets them.
  await page.getByLabel('First day').fill(inDays(900))
  await page.getByLabel('Last day').fill(inDays(899))
  await page.getByLabel('Reason (optional)').fill('rope course')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('dialog')).toBeVisible() // the last day lies before the first
  await page.getByLabel('Last day').fill(inDays(901))
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('dialog')).toBeHidden()

  const taken = new RegExp(`^Remove: ${name}, rope course`)
  await expect(page.getByRole('button', { name: taken })).toBeVisible()
  await expect(owner.getByRole('button', { name: taken })).toBeVisible({ timeout: 4_000 })
  await owner.getByRole('button', { name: taken }).press('Enter')
  await expect(owner.getByRole('heading', { name, exact: true })).toBeFocused() // its button went: the keyboard is not lost
  await expect(page.getByRole('button', { name: taken })).toHaveCount(0, { timeout: 4_000 })
  await office.close()
})

test('two people change the same person: the second sees both values and chooses', async ({ page, browser }) => {
  await signIn(page, 'dispatcher')
  const second = await (await browser.newContext()).newPage()
  await signIn(second, 'owner')
  for (const one of [page, second]) {
    await one.goto('/crews')
    await one
      .getByRole('button', { name: /^Edit / })
      .first()
      .click()
    await expect(one.getByRole('dialog')).toBeVisible()
  }
  const overtime = (of: typeof page) => of.getByLabel('Overtime, if different from the company’s')
  const before = await overtime(page).inputValue()
  await overtime(page).fill('61')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('dialog')).toBeHidden()
  await overtime(second).fill('63')
  await second.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(second.getByRole('button', { name: 'Keep mine' })).toBeVisible()
  await second.getByRole('button', { name: 'Keep mine' }).click()
  await expect(second.getByRole('dialog')).toBeHidden()
  await expect(page.getByText(/63.* an hour/).first()).toBeVisible({ timeout: 4_000 })
  await page
    .getByRole('button', { name: /^Edit / })
    .first()
    .click()
  await overtime(page).fill(before)
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('dialog')).toBeHidden()
  await second.context().close()
})
