import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test('a dispatcher takes a job from inside the sheet; a second dispatcher’s page shows it by itself; undo takes it off again', async ({
  page,
  browser,
}) => {
  await signIn(page, 'dispatcher')
  await expect(page).toHaveURL(/day-sheets/)
  // The day after tomorrow or the Monday after it: a working day of the demo with crews and room.
  await page.getByRole('button', { name: 'The day after' }).click()
  await page.getByRole('button', { name: 'The day after' }).click()
  for (
    let i = 0;
    i < 3 &&
    (await page
      .getByText('No crew has a sheet on this day')
      .isVisible()
      .catch(() => false));
    i++
  )
    await page.getByRole('button', { name: 'The day after' }).click()
  const place = page.getByRole('button', { name: /^Place / }).first()
  await expect(place).toBeVisible()
  const label = ((await place.getAttribute('aria-label')) ?? '').replace(/^Place /, '').replace(/ at \d\d:\d\d$/, '')

  const office = await browser.newContext()
  const second = await office.newPage()
  await signIn(second, 'dispatcher')
  await second.goto(page.url())
  await expect(second.getByRole('button', { name: `Move ${label}` })).toHaveCount(0)

  await place.click()
  await expect(page.getByText(`${label} is booked.`)).toBeVisible()
  await expect(page.getByRole('button', { name: `Move ${label}` })).toBeVisible()
  await expect(second.getByRole('button', { name: `Move ${label}` })).toBeVisible({ timeout: 4_000 })

  await page.getByRole('button', { name: 'Undo' }).click()
  await expect(page.getByRole('button', { name: `Move ${label}` })).toHaveCount(0)
  await expect(second.getByRole('button', { name: `Move ${label}` })).toHaveCount(0, { timeout: 4_000 })
  await office.close()
})

test('the sheets can be worked by keyboard alone', async ({ page }) => {
  await signIn(page, 'dispatcher')
  const open = page.locator('[data-open]')
  await expect(open).toBeVisible()
  const first = await open.textContent()
  await open.focus()
  // Down past the lines of the open sheet to the next folded one, then open it.
  for (let i = 0; i < 40; i++) {
    await page.keyboard.press('ArrowDown')
    const folded = await page.evaluate(() => document.activeElement?.getAttribute('aria-expanded') === 'false')
    if (folded) break
  }
  await page.keyboard.press('Enter')
  await expect(open).not.toHaveText(first ?? '')
})

test('a job’s page lists its best places and says why others do not fit', async ({ page }) => {
  await signIn(page, 'dispatcher')
  await page.goto('/jobs?kind=rebed')
  await page.getByRole('table').getByRole('link').first().click()
  await expect(page.getByRole('heading', { name: 'Best places' })).toBeVisible()
  await page.getByText('Where it does not go, and why').click()
  await expect(page.getByText(/needs|person|people|room/i).first()).toBeVisible()
})
