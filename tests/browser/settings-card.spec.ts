import AxeBuilder from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import { askDatabase } from '../support/ask-database.ts'
import { signIn } from '../support/sign-in.ts'

// Each journey walks several pages.
test.setTimeout(180_000)

/** Opens the card of a house's softener whose tank size is known, as its site's page leads to it: two tanks in turn keep no reserve, however many people there are. */
async function openCard(page: Page) {
  const [site] = await askDatabase<{ id: string }>(
    `select s.id from site s join softener o on o.site_id = s.id join tank t on t.softener_id = o.id join bed b on b.tank_id = t.id
       join company c on c.id = s.company_id
     where c.name = 'Larkmoor Soft Water' and o.arrangement = 'single' and t.diameter_in between 8 and 10 and t.height_in is not null
       and b.ended_latest is null and s.archived_at is null and o.archived_at is null order by s.label limit 1`,
    [],
  )
  await page.goto(`/sites/${site?.id}`)
  await page.getByRole('link', { name: 'Settings card' }).first().click()
  await expect(page.getByRole('heading', { level: 1, name: /^Settings for/ })).toBeVisible()
}

test('a technician reads what to enter at the valve, asks why, and changes people and salt for this page', async ({ page }) => {
  await signIn(page, 'technician')
  await openCard(page)
  await page.getByLabel('Hardness, raw').fill('18')
  await page.getByLabel('Valve').selectOption('meter')
  const card = page.locator('section').filter({ has: page.getByRole('heading', { name: 'Enter at the valve' }) })
  // A day's use: more people, more of it, whatever dose is then the best.
  const reserve = card.getByText('Reserve', { exact: true }).locator('xpath=..').getByRole('button')
  const ofAHousehold = (await reserve.textContent()) ?? ''
  await page.getByLabel('People').fill('4')
  await expect(page).toHaveURL(/people=4/)
  // The address is there before the card is: on a busy machine the number for a usual household was still read.
  await expect(reserve).not.toHaveText(ofAHousehold)
  const before = await reserve.textContent()
  await page.getByLabel('People').fill('2')
  await expect(reserve).not.toHaveText(before ?? '')

  await card.getByRole('button', { name: /lb|kg/ }).first().click()
  const why = page.getByRole('dialog')
  await expect(why.getByText(/we use the one that costs least/)).toBeVisible()
  await expect(why.getByRole('heading', { name: 'Source' })).toBeVisible()
  await page.keyboard.press('Escape')

  await expect(page.getByText(/mg\/L of sodium/)).toBeVisible()
  await page.getByLabel('Salt', { exact: true }).selectOption('KCl')
  await expect(page.getByText(/mg\/L of potassium/)).toBeVisible()

  // The address carries all of it to whoever is sent it.
  await page.reload()
  await expect(page.getByLabel('People')).toHaveValue('2')
  await expect(page.getByText(/mg\/L of potassium/)).toBeVisible()

  await page.getByLabel('People').fill('many')
  await expect(page.getByText(/“many” is not a number/)).toBeVisible()
  await expect(page).toHaveURL(/people=2/)
})

test('the doses are read by keyboard and as a table, and another can be set', async ({ page }) => {
  await signIn(page, 'dispatcher')
  await openCard(page)
  await page.getByLabel('Hardness, raw').fill('18')
  await page.getByLabel('People').fill('4')
  const reader = page.getByRole('slider', { name: /^Read salt/i })
  await reader.focus()
  const first = await reader.getAttribute('aria-valuetext')
  await page.keyboard.press('ArrowRight')
  await expect(reader).not.toHaveAttribute('aria-valuetext', first ?? '')
  await expect(reader).toHaveAttribute('aria-valuetext', /a year, regenerates every/)
  await page.getByRole('button', { name: 'Show as table' }).first().click()
  await expect(page.getByRole('columnheader', { name: 'Water a year' })).toBeVisible()
  await page.getByLabel('Set another dose').selectOption({ index: 20 })
  await expect(page).toHaveURL(/dose=/)
  await expect(page.getByText(/chosen by hand/)).toBeVisible()
  await page.getByRole('button', { name: 'Back to the best' }).click()
  await expect(page).not.toHaveURL(/dose=/)
})

test('backwash and flow are told for this tank, and the card prints without what one cannot press on paper', async ({ page }) => {
  await signIn(page, 'technician')
  await openCard(page)
  await page.getByLabel('Coldest water').fill('38')
  await expect(page.getByText(/Right for winter, 38 °F/)).toBeVisible()
  await page.getByText('summer', { exact: true }).click()
  await expect(page.getByRole('img', { name: /in summer backwash/ })).toBeVisible()
  const peak = page.getByText('Home, at its peak').locator('xpath=..').getByRole('button')
  const ipc = await peak.textContent()
  await page.getByLabel('Peak demand by').selectOption('nspc')
  await expect(peak).not.toHaveText(ipc ?? '')
  await page.emulateMedia({ media: 'print' })
  await expect(page.getByRole('button', { name: 'Print the card' })).toBeHidden()
  await expect(page.getByRole('navigation', { name: 'Main' })).toBeHidden()
  await expect(page.getByText('Right for winter, 38 °F')).toBeVisible()
})

for (const colorScheme of ['light', 'dark'] as const)
  test(`the card breaks no rule of WCAG 2.2 AA and never scrolls sideways, ${colorScheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' })
    await signIn(page, 'technician')
    await openCard(page)
    await expect(page.getByRole('heading', { name: 'What flow it carries' })).toBeVisible()
    for (const size of [
      { width: 390, height: 844 },
      { width: 1024, height: 768 },
      { width: 1440, height: 900 },
    ]) {
      await page.setViewportSize(size)
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
      expect(wide, `at ${size.width} px the card scrolls sideways`).toBeLessThanOrEqual(1)
    }
    const found = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze()
    expect(found.violations.map((one) => `${one.id} ${one.nodes[0]?.html.slice(0, 160)}`)).toEqual([])
  })
