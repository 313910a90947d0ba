import { execFileSync } from 'node:child_process'
import { expect, type Page, test } from '@playwright/test'

/** What whoever runs the server does for one more company: the command prints the link. */
function setUpLink(): string {
  const said = execFileSync('node', ['scripts/run.mjs', 'set-up-link'], { encoding: 'utf8' })
  const link = /http:\S+\/set-up\/\S+/.exec(said)?.[0]
  if (!link) throw new Error(`no link in: ${said}`)
  return link
}

const PASSWORD = 'weir gravel lantern under'

/** Types into the field that has the focus, and goes on to the next. */
async function typeAndGoOn(page: Page, text: string) {
  await page.keyboard.type(text)
  await page.keyboard.press('Tab')
}

test('a company is set up by the host’s link, by keyboard, and its owner is at the way to bring the list in', async ({ page }) => {
  const link = setUpLink()
  await page.goto(link)
  await expect(page.getByRole('heading', { level: 1, name: 'Set up your company' })).toBeVisible()
  // en-US by the browser: what follows from the country stands there, and can be changed.
  await expect(page.getByLabel('Country')).toHaveValue('US')
  await expect(page.getByLabel('Currency')).toHaveValue('USD')
  await page.getByLabel('Country').selectOption({ label: 'Ireland' })
  await expect(page.getByLabel('Units')).toHaveValue('metric')
  await expect(page.getByLabel('Currency')).toHaveValue('EUR')
  await expect(page.getByLabel('Paper')).toHaveValue('a4')
  await page.getByLabel('Country').selectOption({ label: 'United States' })
  await page.getByLabel('Company name').focus()
  await typeAndGoOn(page, 'Tidewell Soft Water')
  await typeAndGoOn(page, '(630) 555-0142')
  await page.getByLabel('Your name').focus()
  await typeAndGoOn(page, 'Ines Roth')
  await typeAndGoOn(page, 'ines@tidewell.example')
  await page.keyboard.type('password123')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('alert').filter({ hasText: 'easy to guess' })).toBeVisible()
  await page.getByLabel('Password').fill(PASSWORD)
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/coming-due/, { timeout: 30_000 })
  await expect(page.getByRole('link', { name: 'Import your customer list' })).toBeVisible()
  await page.getByRole('button', { name: /^Ines Roth/ }).click()
  await expect(page.getByText('Tidewell Soft Water · owner')).toBeVisible()
  await page.goto(link)
  await expect(page.getByRole('heading', { name: 'This link doesn’t work' })).toBeVisible()
})
