import { expect, type Page, test } from '@playwright/test'
import { askDatabase } from '../support/ask-database.ts'
import { type DemoRole, signIn } from '../support/sign-in.ts'

test.describe.configure({ timeout: 180_000 })

/** Signs in and waits for the first page: another one opened before would be overtaken by it. */
async function enter(page: Page, role: DemoRole): Promise<void> {
  await signIn(page, role)
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible({ timeout: 60_000 })
}

const next = (page: Page) => page.locator('section').filter({ has: page.getByRole('heading', { name: 'Next check' }) })
const causes = (page: Page) => page.locator('section').filter({ has: page.getByRole('heading', { name: /^What it may be/ }) })
const todo = (page: Page) => page.locator('section').filter({ has: page.getByRole('heading', { name: 'What to do' }) })
const first = (page: Page) => causes(page).getByRole('listitem').first()

test.describe('on a telephone', () => {
  test.use({ viewport: { width: 390, height: 844 } })

  test('a technician is led from check to check to a repair, and asks why', async ({ page }) => {
    await enter(page, 'technician')
    await page.getByRole('link', { name: 'What’s wrong?' }).click()
    await expect(next(page)).toContainText('Are there beads at the taps?')
    await next(page).getByRole('button', { name: 'None' }).click()
    await expect(next(page)).toContainText('Do you see any of these?')
    await next(page).getByRole('button', { name: 'Don’t know, ask another' }).click()
    await expect(next(page)).toContainText('Does the salt go down?')
    await next(page).getByRole('button', { name: 'Not at all' }).click()
    // Salt that stays: either nothing regenerates or no brine is drawn, and one look at the valve tells which.
    await expect(next(page)).toContainText('Is the valve powered, clock right?')
    await expect(next(page).getByText('Electricity.')).toBeVisible()
    await next(page).getByRole('button', { name: 'Dark, or wrong time' }).click()
    await expect(first(page)).toContainText('Meter or timer fault')
    await expect(todo(page)).toContainText('Repair')

    await first(page).getByRole('button').click()
    const why = page.getByRole('dialog')
    await expect(why).toContainText('Before any check')
    await expect(why).toContainText(/Dark, or wrong time: points to it, × \d/)
    await expect(why).toContainText('from memory, unverified')
    await page.keyboard.press('Escape')
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(1)

    await page.reload()
    await expect(first(page)).toContainText('Meter or timer fault')
  })

  test('beads at the taps are the emergency, whatever else was said', async ({ page }) => {
    await enter(page, 'technician')
    await page.goto('/whats-wrong?salt=none&brine=high')
    await next(page).getByRole('button', { name: 'Yes, beads' }).click()
    const panel = page.getByRole('alert', { name: 'Emergency' })
    await expect(panel).toContainText('Emergency: send someone today')
    await expect(panel.getByRole('listitem').first()).toContainText('Put the softener in bypass')
    await expect(panel).toContainText(/hot water/)
    await expect(panel).toContainText(/ice-maker/)
    await expect(next(page)).toHaveCount(0)
    // It stands above all else.
    const [alarm, bars] = [await panel.boundingBox(), await causes(page).boundingBox()]
    expect(alarm?.y ?? 1e9).toBeLessThan(bars?.y ?? 0)
    await expect(page.getByText('today', { exact: true })).toBeVisible()
  })
})

test('from a bed: its record is the prior, measurements go before answers, and the advised job is proposed', async ({ page }) => {
  // A bed that hardly anything speaks against: of one that has probably failed, two readings leave the worn bed likeliest, and rightly.
  const soundBeds = () =>
    askDatabase<{ site: string; bed: string }>(
      `select f.site_id as site, f.bed_id as bed from bed_forecast f join bed b on b.id = f.bed_id join company c on c.id = f.company_id
     where c.name = $1 and b.ended_latest is null and f.chance_already_failed between 0.02 and 0.2 order by f.bed_id limit 1`,
      ['Larkmoor Soft Water'],
    )
  // Of a demo just loaded the forecasts are still to come.
  await expect.poll(async () => (await soundBeds()).length, { timeout: 90_000 }).toBe(1)
  const [sound] = await soundBeds()
  await enter(page, 'dispatcher')
  await page.goto(`/sites/${sound?.site}`)
  await page.locator(`a[href="/whats-wrong?bedId=${sound?.bed}"]`).click()
  await expect(page).toHaveURL(/whats-wrong\?bedId=/)
  await expect(page.getByText(/The forecast gives \d+% that this bed has failed/)).toBeVisible({ timeout: 30_000 })
  await next(page).getByRole('button', { name: 'None' }).click()
  await page.locator('#all-outlet > summary').click()
  await page.locator('#all-outlet').getByText('Or as measured').click()
  await page.getByLabel('At the valve outlet').fill('0.5')
  await page.getByLabel('At the cold tap').fill('15')
  // Soft at the outlet, hard at the tap: water goes past.
  await expect(first(page)).toContainText('In bypass, or bypass leaking')
  await expect(todo(page)).toContainText('Put the softener in service')
  await page.getByLabel('At the cold tap').fill('many')
  await expect(page.getByText(/“many” is not a number/)).toBeVisible()
  await page.getByLabel('At the cold tap').fill('15')
  await todo(page).getByRole('link', { name: 'Add a job' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Add a job')
  await expect(page.getByLabel('Kind')).toHaveValue('repair')
})

test('by keyboard alone, the next check takes the focus of the one answered', async ({ page }) => {
  await enter(page, 'dispatcher')
  await page.goto('/whats-wrong')
  await next(page).getByRole('button', { name: 'None' }).focus()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: 'Do you see any of these?' })).toBeFocused()
  await page.keyboard.press('Tab')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter') // the third answer
  await expect(page).toHaveURL(/signs=salty/)
  await expect(next(page).getByRole('heading', { level: 3 })).toBeFocused()
  await next(page).getByRole('button', { name: 'Don’t know, ask another' }).focus()
  const skipped = await next(page).getByRole('heading', { level: 3 }).textContent()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { level: 3, name: skipped ?? '' })).toHaveCount(0)
})

test('cautions stand before the check they belong to', async ({ page }) => {
  await enter(page, 'dispatcher')
  await page.goto('/whats-wrong')
  const feel = page.locator('#all-bead-feel')
  await feel.locator('summary').first().click()
  const text = (await feel.textContent()) ?? ''
  expect(text.indexOf('Nothing is opened while there is pressure')).toBeGreaterThan(-1)
  expect(text.indexOf('Nothing is opened while there is pressure')).toBeLessThan(text.indexOf('Unplug only after the pressure is gone'))
  expect(text.indexOf('Unplug only after the pressure is gone')).toBeLessThan(text.indexOf('A spoonful from the top of the bed'))
  const iron = page.locator('#all-iron')
  await iron.locator('summary').first().click()
  await expect(iron.getByText(/Never mix bleach with iron cleaner/)).toBeVisible()
})
