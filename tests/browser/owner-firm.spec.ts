import { expect, type Page, test } from '@playwright/test'
import { figureLine, resetFigure } from '../support/firm-figures-page.ts'
import { signIn } from '../support/sign-in.ts'

test.describe.configure({ mode: 'serial', timeout: 180_000 })

async function setBags(page: Page, sizes: string, why: string): Promise<void> {
  await page.getByRole('button', { name: 'Edit: Bags in stock' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel('Bag sizes').fill(sizes)
  await dialog.getByLabel('Why').fill(why)
  await dialog.getByRole('button', { name: 'Save' }).click()
}

test('bags the owner sets change the kit of a bed at once, and the history says who, when and why', async ({ page }) => {
  await signIn(page, 'owner')
  await resetFigure(page, 'Bags in stock')
  await page.goto('/coming-due')
  const bed = page.locator('a[href^="/beds/"]').first()
  const href = (await bed.getAttribute('href')) ?? ''
  await page.goto(href)
  const kit = page.locator('section').filter({ has: page.getByRole('heading', { name: 'Kit for a rebed' }) })
  await expect(kit.getByText(/× (1 ft³ bag|½ ft³ part bag)/).first()).toBeVisible()

  await page.goto('/firm')
  await setBags(page, '2, 0.75', 'our supplier went over to sacks')
  const bags = figureLine(page, 'Bags in stock')
  await expect(bags).toContainText('Your own value. Default: 1 ft³, ½ ft³, ¼ ft³ (common practice, no source).')
  await expect(bags).toContainText(/Changed by .+: “our supplier went over to sacks”/)
  await expect(page.getByRole('list', { name: 'Changes to company settings' })).toContainText('our supplier went over to sacks')

  await page.goto(href)
  await expect(kit.getByText(/× (2 ft³ bag|¾ ft³ bag)/).first()).toBeVisible()
  await expect(kit.getByText(/× (1 ft³ bag|½ ft³ part bag)/)).toHaveCount(0)
  await resetFigure(page, 'Bags in stock')
  await expect(figureLine(page, 'Bags in stock')).toContainText('Reset to default by')
})

test('a figure that cannot stand is refused with a sentence, and what was typed is kept', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/firm')
  await page.getByRole('button', { name: 'Edit: 10 × 54 in tank' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel('Usual resin').fill('3')
  await dialog.getByRole('button', { name: 'Save' }).click()
  await expect(dialog.getByText(/this much resin and gravel don’t fit/)).toBeVisible()
  await expect(dialog.getByLabel('Usual resin')).toHaveValue('3')
  await expect(figureLine(page, '10 × 54 in tank')).toContainText('1½ ft³')
})

test('of two owners who change a figure at once the second sees both values and chooses', async ({ browser }) => {
  const [first, second] = [await browser.newPage(), await browser.newPage()]
  await signIn(first, 'owner')
  await resetFigure(first, 'Iron allowance')
  await signIn(second, 'owner')
  await second.goto('/firm')
  await second.getByRole('button', { name: 'Edit: Iron allowance' }).click()
  await second.getByRole('dialog').getByLabel('Added for each mg/L').fill('3')

  await first.getByRole('button', { name: 'Edit: Iron allowance' }).click()
  await first.getByRole('dialog').getByLabel('Added for each mg/L').fill('5')
  await first.getByRole('dialog').getByRole('button', { name: 'Save' }).click()
  await expect(figureLine(first, 'Iron allowance')).toContainText('5 gpg per mg/L')

  const dialog = second.getByRole('dialog')
  await dialog.getByRole('button', { name: 'Save' }).click()
  const row = dialog.getByRole('row').filter({ hasText: 'Figure' })
  await expect(row).toContainText('5 gpg per mg/L')
  await expect(row).toContainText('3 gpg per mg/L')
  await dialog.getByRole('button', { name: 'Keep mine' }).click()
  await expect(dialog).toHaveCount(0)
  // The other's page follows by itself.
  await expect(figureLine(first, 'Iron allowance')).toContainText('3 gpg per mg/L', { timeout: 15_000 })
  await resetFigure(first, 'Iron allowance')
  await first.close()
  await second.close()
})

test('a dispatcher reads the figures and cannot change them', async ({ page }) => {
  await signIn(page, 'dispatcher')
  const navigation = page.getByRole('navigation', { name: 'Main' })
  await navigation.getByRole('button', { name: 'More' }).click()
  await expect(navigation.getByRole('link', { name: 'Reminders' })).toBeVisible()
  await expect(navigation.getByRole('link', { name: 'Company' })).toHaveCount(0)
  await page.goto('/firm')
  await expect(page.getByText('Only the owner changes them.')).toBeVisible()
  await expect(figureLine(page, '10 × 54 in tank')).toBeVisible()
  await expect(page.getByRole('button', { name: /^(Edit|Add)/ })).toHaveCount(0)
  const answer = await page.evaluate(async () => {
    const json = { key: 'allowance:iron', version: 0, value: 9, note: null, commandId: '0197b3a2-6c00-7000-8000-000000000001' }
    const sent = await fetch('/api/rpc/firm/changeFigure', {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'x-csrf-token': 'orpc' },
      body: JSON.stringify({ json }),
    })
    return { status: sent.status, said: await sent.text() }
  })
  expect(answer.said).toContain('can’t do this')
  expect(answer.status).toBe(403)
})
