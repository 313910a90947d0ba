import AxeBuilder from '@axe-core/playwright'
import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test('an owner previews and approves a reminder; its reader answers on a phone, without scripts, and the office sees it', async ({
  page,
  browser,
}) => {
  await signIn(page, 'owner')
  await page.goto('/reminders')
  const mailed = page
    .getByRole('row')
    .filter({ hasText: /email: / })
    .first()
  await mailed.getByRole('button', { name: 'Preview' }).click()
  const preview = page.getByRole('dialog')
  await expect(preview.getByText(/The resin in your water softener at|La resina de su ablandador/)).toBeVisible()
  await page.keyboard.press('Escape')
  const site = (await mailed.getByRole('link').first().locator('span').first().textContent()) ?? ''
  await mailed.getByRole('checkbox').check()
  await page.getByRole('button', { name: 'Approve', exact: true }).click()
  await expect(page.getByText('1 done.')).toBeVisible()

  await page.goto('/reminders?view=outbox')
  await page.locator('summary').filter({ hasText: site }).click()
  const body = (await page.locator('details[open]').textContent()) ?? ''
  const link = body.match(/https?:\/\/\S+\/reminder\/[\w-]+/)?.[0] ?? ''
  expect(link).not.toBe('')

  const phone = await browser.newContext({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false })
  const reader = await phone.newPage()
  const opened = await reader.goto(`${link}?l=en`)
  expect(opened?.headers()['referrer-policy']).toBe('no-referrer')
  await expect(reader.getByRole('heading', { name: 'Time for new resin in your softener' })).toBeVisible()
  await reader.getByText('Not now', { exact: true }).click()
  await reader.getByText('In 3 months').click()
  await reader.getByRole('button', { name: 'Ask me later' }).click()
  await expect(reader.getByText(/^We’ll ask again in/)).toBeVisible()
  await reader.reload()
  await expect(reader.getByRole('button')).toHaveCount(0)
  await reader.getByRole('link', { name: 'Español' }).click()
  await expect(reader.getByRole('heading', { name: 'Gracias' })).toBeVisible()
  expect(await reader.evaluate(() => document.documentElement.scrollWidth)).toBe(390)
  expect((await reader.goto(`${link.slice(0, -3)}xxx`))?.status()).toBe(404)
  await phone.close()

  await page.goto('/reminders?view=answers')
  await expect(page.getByText('Not now: ask again from').first()).toBeVisible()
  const axe = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze()
  expect(axe.violations).toEqual([])
})
