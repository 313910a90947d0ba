import AxeBuilder from '@axe-core/playwright'
import { expect, type Locator, test } from '@playwright/test'
import { askDatabase } from '../support/ask-database.ts'
import { option, searchField, someCustomer } from '../support/head-search.ts'
import { signIn } from '../support/sign-in.ts'

test('each role has six entries at most, in one line at 1024 px; the rest folds out of More and in again', async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 768 })
  for (const role of ['owner', 'dispatcher', 'technician'] as const) {
    await signIn(page, role)
    await page.goto('/sites')
    const navigation = page.getByRole('navigation', { name: 'Main' })
    const entries = await navigation.getByRole('link').all()
    expect(entries.length).toBeGreaterThanOrEqual(4)
    expect(entries.length).toBeLessThanOrEqual(6)
    const tops = await Promise.all(entries.map(async (one) => (await one.boundingBox())?.y))
    expect(new Set(tops).size).toBe(1)
    expect((await page.getByRole('banner').boundingBox())?.height).toBeLessThan(70)
    const more = navigation.getByRole('button', { name: 'More' })
    await more.click()
    await expect(more).toHaveAttribute('aria-expanded', 'true')
    await expect(navigation.getByRole('link', { name: 'Water' })).toBeVisible()
    await page.keyboard.press('Escape')
    await expect(more).toHaveAttribute('aria-expanded', 'false')
    await expect(more).toBeFocused()
    await page.context().clearCookies()
  }
})

test('the search says what it found and what it did not, waits with Enter for its answers, and Escape leaves it', async ({ page }) => {
  await signIn(page, 'dispatcher')
  await expect(page.getByText(/^(Reading|Loading)/)).toHaveCount(0)
  await page.keyboard.press('/')
  await page.keyboard.type('zzqqzzqq')
  await expect(page.getByText('Nothing found for “zzqqzzqq”.')).toBeVisible()
  await expect(page.getByRole('banner').getByRole('link', { name: 'Add a site' })).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByText('Nothing found')).toBeHidden()
  await page.keyboard.press('Escape')
  await expect(searchField(page)).toHaveValue('')

  const { label, customer, siteId } = await someCustomer(page)
  // The answer takes longer than the fingers: Enter must not open what the text before found.
  await page.route('**/api/rpc/find/look', async (route) => {
    await new Promise((next) => setTimeout(next, 800))
    await route.continue()
  })
  await searchField(page).pressSequentially('sto', { delay: 10 })
  await expect(page.getByRole('option', { name: 'Stores' })).toBeVisible()
  // A street and number may be in two towns.
  await searchField(page).fill(`${label} ${customer}`)
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(new RegExp(siteId), { timeout: 10_000 })
  // Nothing that was typed stands in an address.
  expect(new URL(page.url()).search).toBe('')
  await expect(searchField(page)).toHaveValue('')
})

test('whoever does not want the key "/" switches it off', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/sites')
  await page
    .getByRole('banner')
    .getByRole('button', { name: /^Marian/ })
    .click()
  await page.getByRole('checkbox', { name: 'Press / to search' }).uncheck()
  await page.keyboard.press('Escape')
  await page.keyboard.press('/')
  await expect(searchField(page)).not.toBeFocused()
})

/** The street of the demo with the most sites. */
async function longestStreet(): Promise<string> {
  const [most] = await askDatabase<{ street: string }>(
    `select regexp_replace(s.label, ' \\d+$', '') as street from site s join company c on c.id = s.company_id
     where c.name = $1 and s.label ~ '^\\D+ \\d+$' and s.archived_at is null group by 1 order by count(*) desc limit 1`,
    ['Larkmoor Soft Water'],
  )
  return most?.street ?? ''
}

for (const size of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
])
  test(`search, menu and a bed’s head break no rule of WCAG 2.2 AA at ${size.width} px, light and dark`, async ({ page }) => {
    test.setTimeout(120_000)
    await page.setViewportSize(size)
    await signIn(page, 'owner')
    await page.goto('/sites')
    await expect(page.getByText(/^(Reading|Loading)/)).toHaveCount(0)
    const { label } = await someCustomer(page)
    const faults = async () => {
      const found: string[] = []
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme })
        const axe = new AxeBuilder({ page }).exclude('main table').withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
        found.push(...(await axe.analyze()).violations.map((one) => `${colorScheme}: ${one.id} ${one.nodes[0]?.html.slice(0, 160)}`))
      }
      return found
    }
    await page.keyboard.press('/')
    await page.keyboard.type(label)
    await expect(option(page, label)).toBeVisible()
    expect(await faults()).toEqual([])
    // A street on a low window: more than the box holds.
    await page.keyboard.press('ControlOrMeta+a')
    await page.keyboard.type(await longestStreet())
    await page.setViewportSize({ ...size, height: 360 })
    const list = page.getByRole('listbox')
    await expect.poll(() => list.evaluate((one) => one.scrollHeight > one.clientHeight)).toBe(true)
    expect(await faults()).toEqual([])
    await page.setViewportSize(size)
    await page.keyboard.press('Escape')
    await page.keyboard.press('Escape')
    await page
      .getByRole('banner')
      .getByRole('button', { name: size.width < 1024 ? /^Menu/ : /^More/ })
      .click()
    expect(await faults()).toEqual([])
    await page.goto('/coming-due')
    await page.getByRole('table').getByRole('link').first().click()
    await expect(page.getByRole('heading', { name: /^Due about/ })).toBeVisible()
    expect(await faults()).toEqual([])
    if (size.width < 640) {
      // When due, whom to call, then the drawing.
      const top = async (target: Locator) => (await target.boundingBox())?.y ?? 0
      const due = await top(page.getByRole('heading', { name: /^Due about/ }))
      const call = await top(page.getByRole('link', { name: /^Call / }))
      const drawing = await top(
        page
          .locator('main figure, main svg[role="img"]')
          .filter({ hasNot: page.locator('[data-ribbon]') })
          .last(),
      )
      expect(due).toBeLessThan(call)
      expect(call).toBeLessThan(size.height)
      expect(call).toBeLessThan(drawing)
    }
  })
