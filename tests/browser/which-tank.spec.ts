import { expect, type Page, test } from '@playwright/test'
import { type DemoRole, signIn } from '../support/sign-in.ts'

test.describe.configure({ timeout: 180_000 })

/** Signs in and waits for the first page: another one opened before would be overtaken by it. */
async function enter(page: Page, role: DemoRole): Promise<void> {
  await signIn(page, role)
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible({ timeout: 60_000 })
}

const answer = (page: Page) => page.locator('main output').first()

test.describe('on a telephone', () => {
  test.use({ viewport: { width: 390, height: 844 } })

  test('a technician finds the tank with tape in hand: asked what tells most, settled after two measures, with the kit', async ({
    page,
  }) => {
    await enter(page, 'technician')
    await page.getByRole('link', { name: 'Which tank?' }).click()
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Which tank is it?')
    await expect(answer(page)).toContainText('Nothing known yet')
    await expect(page.getByText(/Next: measure the circumference/)).toBeVisible()

    // π × 10 in round: both lengths of a 10 in tank are left, and a height tells them apart.
    await page.getByLabel('Around the tank').fill('31 1/2')
    await expect(answer(page)).toContainText(/10 × 44 in or 10 × 54 in|10 × 54 in or 10 × 44 in/)
    await expect(page.getByText('They take different kits: measure once more.')).toBeVisible()
    await page.getByRole('link', { name: /Next: measure the height/ }).click()
    await expect(page.getByLabel('Floor to the rim, without the valve')).toBeFocused()
    await page.getByLabel('Floor to the top of the valve').fill('61')
    await expect(answer(page)).toContainText('10 × 54 in')
    await expect(answer(page)).toContainText('almost certain')
    // 1½ ft³ in a 10 × 54 in tank: the trade's table, common practice.
    await expect(page.getByText(/1½ ft³ of resin: 1 × 1 ft³ bag and 1 × ½ ft³ part bag/)).toBeVisible()

    // The answer stays in sight while one types, and nothing runs out of the page.
    await page.getByText('More that could be measured').scrollIntoViewIfNeeded()
    await expect(answer(page)).toBeInViewport()
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(1)
    for (const target of await page.getByRole('main').locator('input:visible:not([type=radio]), button:visible, summary:visible').all())
      expect((await target.boundingBox())?.height ?? 0).toBeGreaterThanOrEqual(44)

    // What was typed can be sent to somebody.
    await page.reload()
    await expect(page.getByLabel('Floor to the top of the valve')).toHaveValue('61')
    await expect(answer(page)).toContainText('10 × 54 in')
  })

  test('reads a label as people write it, and says what it cannot take', async ({ page }) => {
    await enter(page, 'technician')
    await page.goto('/which-tank')
    const label = page.getByLabel('What the label or the notes say')
    await label.fill('1054')
    await expect(answer(page)).toContainText('10 × 54 in')
    await expect(page.getByText('Read as 10 × 54 in.')).toBeVisible()
    await label.fill('48k')
    await expect(page.getByText('over 99%')).toHaveCount(0)
    await expect(page.getByRole('listitem').filter({ hasText: '10 × 54 in' })).toContainText(/\d\d%/)
    await label.fill('the blue one')
    await expect(page.getByText(/is not understood as a tank/)).toBeVisible()
    await page.getByLabel('Floor to the rim, without the valve').fill('4000')
    await expect(page.getByText(/Height to the rim: 4,000 in is left out/)).toBeVisible()
  })
})

test('centimeters, an unlisted size worked out, and why', async ({ page }) => {
  await enter(page, 'dispatcher')
  await page.goto('/which-tank')
  await page.getByRole('radio', { name: 'cm', exact: true }).check()
  // 88 cm round is 34.6 in, 11 in across; 127 cm is 50 in.
  await page.getByLabel('Around the tank').fill('88')
  await page.getByLabel('Floor to the rim, without the valve').fill('127')
  await page.getByRole('radio', { name: 'no, bare tank' }).check()
  await expect(answer(page)).toContainText('11 × 50 in, not in the table')
  await page.getByRole('button', { name: /How we got these chances/ }).click()
  await expect(page.getByRole('dialog')).toContainText('common practice, no source')
  await expect(page.getByRole('dialog')).toContainText('34⅝ in')
})

test('by keyboard alone', async ({ page }) => {
  await enter(page, 'dispatcher')
  await page.goto('/which-tank')
  await page.getByLabel('What the label or the notes say').focus()
  await page.keyboard.type('12x52')
  await expect(answer(page)).toContainText('12 × 52 in')
  await page.keyboard.press('Tab') // the unit of the tape
  await page.keyboard.press('Tab')
  await expect(page.getByLabel('Around the tank')).toBeFocused()
  await page.keyboard.type('37.7')
  await expect(answer(page)).toContainText('over 99%')
})

test('opened from a bed, the size found is written to its tank once', async ({ page }) => {
  await enter(page, 'dispatcher')
  const name = `Reedmace ${Date.now().toString(36)}`
  await page.goto('/sites/new')
  await page.getByRole('textbox', { name: 'Customer', exact: true }).fill(name)
  await page.getByRole('textbox', { name: 'Street' }).fill(`${name} Lane 3`)
  await page.getByRole('textbox', { name: 'Tank' }).fill('48k')
  await page.getByRole('button', { name: 'Save the site' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(`${name} Lane 3`, { timeout: 60_000 })
  await page.locator('a[href^="/beds/"]').first().click()
  await page.getByRole('link', { name: 'Which tank is it?' }).click()
  await expect(page.getByText(/On record:/)).toContainText('48k', { timeout: 30_000 })
  await page.getByLabel('Around the tank').fill('31.4')
  await page.getByLabel('Floor to the rim, without the valve').fill('54')
  await page.getByRole('button', { name: 'Write 10 × 54 in to this tank' }).click()
  await expect(page.getByText('Written to the tank.')).toBeVisible({ timeout: 30_000 })
  await expect(page.getByText(/On record:/)).toContainText('10 × 54 in')
  await page.getByRole('link', { name: `${name} Lane 3` }).click()
  await expect(page.getByText('10 × 54 in').first()).toBeVisible({ timeout: 30_000 })
})
