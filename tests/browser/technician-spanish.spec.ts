import { asks } from '@almanac/words/es/asks'
import { common } from '@almanac/words/es/common'
import { steps } from '@almanac/words/es/steps'
import { today } from '@almanac/words/es/today'
import { visit } from '@almanac/words/es/visit'
import { expect, type Page, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test.use({ viewport: { width: 1024, height: 768 } })

async function choose(page: Page, from: string, language: string): Promise<void> {
  await page.goto('/today')
  await page.getByRole('button', { name: new RegExp(`^(Menu|${common.menu})$`) }).click()
  const loaded = page.waitForEvent('load')
  await page.getByLabel(from).selectOption(language)
  await loaded
}

test('a technician chooses Spanish: the day, the visit, its steps and its paper speak it, and an English one’s do not', async ({
  page,
  browser,
}) => {
  test.setTimeout(120_000)
  await signIn(page, 'technician')
  await choose(page, 'Language', 'es')
  await expect(page.locator('html')).toHaveAttribute('lang', 'es')
  await expect(page.getByText(today.title, { exact: true })).toBeVisible()
  await page
    .getByRole('link', { name: /Visita anual|Cambio de lecho/ })
    .last()
    .click()
  await expect(page.getByRole('button', { name: visit.start }).or(page.getByRole('button', { name: visit.resume }))).toBeVisible()
  await page.getByRole('button', { name: new RegExp(`^(${visit.start}|${visit.resume})$`) }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(steps['stop-and-refer'])
  await page.getByLabel(asks['stop-case/none']).check()
  await page.getByRole('button', { name: visit.nextStep }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(new RegExp(`${steps['check-water']}|${steps['test-water']}`))
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(1)

  const other = await browser.newPage()
  await signIn(other, 'owner')
  await expect(other.locator('html')).toHaveAttribute('lang', 'en')
  await other.close()
  await choose(page, 'Idioma', '')
  await expect(page.locator('html')).toHaveAttribute('lang', 'en')
})
