import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test('the owner learns when to act, sees that costs are examples, types his own, and shares the answer by its address', async ({
  page,
}) => {
  await signIn(page, 'owner')
  await page.getByRole('link', { name: 'Best age to rebed' }).click()
  await expect(page.getByRole('heading', { level: 1, name: 'Best age to rebed' })).toBeVisible()
  await expect(page.getByText(/Rebed between [\d.]+ and .* of age: about \$/)).toBeVisible()
  const planned = page.getByLabel('A planned rebed')
  await planned.fill('400')
  await page.getByLabel('A rebed after a failure, everything').fill('1600')
  await page.getByRole('button', { name: 'Recalculate' }).click()
  await expect(page).toHaveURL(/planned=400.*failure=1600/)
  await expect(page.getByText('as you typed it here')).toHaveCount(2)
  // A failure that costs four times as much: the window ends earlier than half of the beds last.
  const answer = await page.getByText(/Rebed between/).textContent()
  await page.reload()
  await expect(page.getByText(/Rebed between/)).toHaveText(answer ?? '')
  // A failure that costs no more than a rebed is worth waiting for.
  await page.getByLabel('A rebed after a failure, everything').fill('400')
  await page.getByLabel('Beads in the plumbing, extra').fill('0')
  await page.getByRole('button', { name: 'Recalculate' }).click()
  await expect(page.getByText(/cheapest to wait until a bed fails/)).toBeVisible()
})

test('the cost picture is read by keyboard, as a table, and taken away as figures and as a picture', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/policy')
  const reader = page.getByRole('slider', { name: 'Read the cost by age' })
  await reader.focus()
  const before = await reader.getAttribute('aria-valuetext')
  await page.keyboard.press('ArrowRight')
  await expect(reader).not.toHaveAttribute('aria-valuetext', before ?? '')
  for (const [button, name] of [
    [/Save figures/, 'cost-per-bed-per-year-by-age-at-rebed.csv'],
    [/Save picture/, 'cost-per-bed-per-year-by-age-at-rebed.png'],
  ] as const) {
    const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: button }).click()])
    expect(file.suggestedFilename()).toBe(name)
  }
  await page.getByRole('button', { name: 'Show as table' }).click()
  await expect(page.getByRole('columnheader', { name: 'Cost a year' })).toBeVisible()
})

test('what it costs is no dispatcher’s business', async ({ page }) => {
  await signIn(page, 'dispatcher')
  await page.goto('/coming-due')
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  await expect(page.getByRole('link', { name: 'Best age to rebed' })).toHaveCount(0)
  await page.goto('/policy')
  await expect(page.getByRole('alert').first()).toBeVisible()
  await expect(page.getByText(/Rebed between/)).toHaveCount(0)
})
