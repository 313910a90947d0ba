import AxeBuilder from '@axe-core/playwright'
import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test('a customer chooses one of three times by link, without scripts; the dispatcher’s page shows it, the other times are free', async ({
  page,
  browser,
}) => {
  await signIn(page, 'dispatcher')
  await page.goto('/jobs')
  await page.getByRole('row').getByRole('link', { name: /./ }).first().click()
  await page.getByRole('button', { name: 'Offer times' }).click()
  await expect(page.getByRole('checkbox', { checked: true })).toHaveCount(3)
  await page.getByRole('button', { name: 'Hold and create link' }).click()
  const link = await page.getByLabel('The customer’s link').or(page.getByLabel("The customer's link")).inputValue()
  await expect(page.getByText('offered', { exact: true })).toHaveCount(3)

  const telephone = await browser.newContext({ viewport: { width: 390, height: 844 }, javaScriptEnabled: false })
  const customer = await telephone.newPage()
  expect((await customer.goto(link))?.headers()['referrer-policy'] ?? '').not.toContain('unsafe')
  await expect(customer.getByRole('radio')).toHaveCount(3)
  await customer.getByRole('radio').nth(1).check()
  await customer.getByRole('button', { name: 'Choose this time' }).click()
  await expect(customer.getByText(/^We’ll be there on/)).toBeVisible()

  await expect(page.getByText('offered', { exact: true })).toHaveCount(0, { timeout: 4_000 })
  await expect(page.getByText('called off', { exact: true })).toHaveCount(2)
  await expect(page.getByText('booked', { exact: true }).first()).toBeVisible()

  const file = await customer.request.get((await customer.getByRole('link', { name: 'Add to calendar' }).getAttribute('href')) ?? '')
  expect(file.headers()['content-type']).toContain('text/calendar')
  expect(await file.text()).toContain('BEGIN:VEVENT')
  await telephone.close()

  const reader = await browser.newContext({ viewport: { width: 390, height: 844 }, colorScheme: 'dark' })
  const again = await reader.newPage()
  await again.goto(link)
  await expect(again.getByText(/^We’ll be there on/)).toBeVisible()
  const axe = await new AxeBuilder({ page: again }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa']).analyze()
  expect(axe.violations).toEqual([])
  expect((await again.goto(`${link.slice(0, -2)}xx`))?.status()).toBe(404)
  await reader.close()
})

test('a technician makes a calendar address and ends it again', async ({ page }) => {
  await signIn(page, 'technician')
  await page.goto('/sessions')
  const addresses = page.getByLabel(/^Address made/)
  await page.getByRole('button', { name: 'Make an address' }).click()
  await expect(addresses).toHaveCount(1)
  const feed = await addresses.first().inputValue()
  expect(await (await page.request.get(feed)).text()).toContain('BEGIN:VCALENDAR')
  await page.getByRole('button', { name: 'End this address' }).click()
  await expect(addresses).toHaveCount(0)
  expect((await page.request.get(feed)).status()).toBe(404)
})
