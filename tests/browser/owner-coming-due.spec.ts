import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test('the owner sees what comes due and why, proposes jobs, and the dispatcher’s open page shows them by itself', async ({
  page,
  browser,
}) => {
  const office = await browser.newContext()
  const dispatcher = await office.newPage()
  await signIn(dispatcher, 'dispatcher')
  await dispatcher.goto('/jobs')
  await expect(dispatcher.getByRole('heading', { level: 1 })).toBeVisible()

  await signIn(page, 'owner')
  await expect(page).toHaveURL(/coming-due/)
  await expect(page.getByText(/beds watched. In the next 12 months expect/)).toBeVisible()
  await page.getByRole('button', { name: /to fail \(why/ }).click()
  await expect(page.getByRole('dialog')).toContainText('Poisson-binomial')
  await page.keyboard.press('Escape')

  const table = page.getByRole('table', { name: 'Beds that come due' })
  await expect(table.getByRole('row')).not.toHaveCount(1)
  const free = table.getByRole('row').filter({ hasNotText: /proposed|booked/ })
  const names: string[] = []
  for (const row of (await free.all()).slice(1, 3)) {
    await row.getByRole('checkbox').check()
    names.push((await row.getByRole('link').first().textContent()) ?? '')
  }
  await expect(page.getByText('2 selected')).toBeVisible()
  await page.getByRole('button', { name: 'Propose jobs' }).click()
  await expect(page.getByText('2 jobs proposed.')).toBeVisible()
  // The other person's page changes without a touch: within two seconds, plus the time to fetch and draw.
  for (const name of names) await expect(dispatcher.getByText(name.replace(/\s+/g, ' ').trim()).first()).toBeVisible({ timeout: 4_000 })
  await office.close()
})

test('filters narrow the list, stand in the address, and can be cleared', async ({ page }) => {
  await signIn(page, 'owner')
  const table = page.getByRole('table', { name: 'Beds that come due' })
  await expect(table.getByRole('row')).not.toHaveCount(1)
  await page.getByLabel('Chance in 12 months').selectOption('40')
  await expect(page).toHaveURL(/chance=40/)
  await page.getByLabel('Age', { exact: true }).selectOption('10')
  await expect(page).toHaveURL(/age=10/)
  await page.reload()
  await expect(page.getByLabel('Chance in 12 months')).toHaveValue('40')
  await page
    .getByRole('button', { name: /Clear|all/i })
    .first()
    .click()
  await expect(page).not.toHaveURL(/chance=/)
})

test('the month picture can be read as a table', async ({ page }) => {
  await signIn(page, 'owner')
  await page.getByRole('button', { name: 'Show as table' }).click()
  await expect(page.getByRole('columnheader', { name: 'Expected' })).toBeVisible()
})

test('five years ahead with the plan: rebeds, hours and materials, by keyboard and as tables', async ({ page }) => {
  test.setTimeout(400_000)
  await signIn(page, 'owner')
  await page.getByLabel('Look ahead').selectOption('5-years')
  await expect(page).toHaveURL(/view=5-years/)
  await page.getByRole('slider', { name: 'Read the picture month by month' }).focus()
  await page.keyboard.press('End')
  await expect(page.getByText(/expected to fail, .* four times out of five/).first()).toBeVisible()
  // Right after the demo is loaded the worker is still at the plan; the page changes by itself.
  await expect(page.getByRole('button', { name: /plan about \d+ rebeds a month/ })).toBeVisible({ timeout: 330_000 })
  await page.getByRole('button', { name: /Show as table.*Rebeds planned/ }).click()
  for (const head of ['Crew hours', 'Resin, ft³', 'Gravel, lb']) await expect(page.getByRole('columnheader', { name: head })).toBeVisible()
})

test('a bed that has probably failed already says so in its own column', async ({ page }) => {
  await signIn(page, 'owner')
  await expect(page.getByRole('columnheader', { name: 'Failed already?' })).toBeVisible()
})
