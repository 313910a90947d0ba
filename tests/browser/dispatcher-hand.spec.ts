import { expect, type Page, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

/** The first waiting job that one person can do in little time. */
async function openJob(page: Page, kind: string): Promise<void> {
  await page.goto(`/jobs?kind=${kind}`)
  await page.getByRole('table').getByRole('link').first().click()
  await expect(page.getByRole('heading', { name: 'Best places' })).toBeVisible()
}

/** Takes what is asked about as known. */
async function anyway(page: Page, verb: string): Promise<void> {
  const asked = page.getByRole('button', { name: `${verb} anyway` })
  await expect(asked.or(page.getByText(verb === 'Book' ? 'is booked.' : 'is moved.')).first()).toBeVisible()
  if (await asked.isVisible()) await asked.click()
}

test('a dispatcher looks for Thursday morning, books any other day and time by hand, moves it to another day, and changes the job', async ({
  page,
}) => {
  await signIn(page, 'dispatcher')
  await openJob(page, 'annual-visit')
  const places = page.getByRole('list').filter({ has: page.getByRole('button', { name: /^Book / }) })
  await expect(places.first()).toBeVisible()
  await page.getByLabel('Half').selectOption('afternoon')
  await expect(page.getByRole('button', { name: /^Book .* AM,/ })).toHaveCount(0)
  await page.getByLabel('Half').selectOption('morning')
  await expect(page.getByRole('button', { name: /^Book .* AM,/ }).first()).toBeVisible()
  await expect(page.getByRole('button', { name: /^Book .* PM,/ })).toHaveCount(0)
  const day = page.getByLabel('Day', { exact: true })
  const [, , second] = await day.getByRole('option').evaluateAll((all) => all.map((one) => (one as HTMLOptionElement).value))

  await page.getByRole('button', { name: 'Any other time' }).click()
  const dialog = page.getByRole('dialog')
  await dialog.getByLabel('Day').fill(second ?? '')
  await expect(dialog.getByLabel('On the sheet of').getByRole('option').first()).toBeAttached()
  // Six in the evening is outside every crew's hours: it is asked about, and then stands.
  await dialog.getByLabel('Begins at').fill('18:00')
  await dialog.getByRole('button', { name: 'Book' }).click()
  await expect(page.getByRole('dialog')).toContainText('but this crew works from')
  await page.getByRole('button', { name: 'Book anyway' }).click()
  await expect(page.getByText('is booked.')).toBeVisible()
  await expect(page.getByText(/6:00\sPM/).first()).toBeVisible()

  // A new length moves the end of its visit.
  await page.getByRole('button', { name: 'Change job' }).click()
  await page.getByLabel('Length on site').selectOption({ label: '1 h 30 min' })
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await expect(page.getByRole('dialog')).toContainText('The visit would last from 6:00')
  await page.getByRole('button', { name: 'Save anyway' }).click()
  await expect(page.getByText('one person, 1 h 30 min on site')).toBeVisible()

  // To another day from its sheet.
  await page.getByRole('link', { name: /6:00\sPM$/ }).click()
  await expect(page.locator('[data-open]')).toBeVisible()
  const line = page
    .getByRole('listitem')
    .filter({ hasText: /6:00\sPM/ })
    .filter({ has: page.getByRole('button', { name: /^Move / }) })
  await line.getByRole('button', { name: /^Move / }).click()
  const days = await page.getByRole('dialog').getByLabel('Day').inputValue()
  const later = new Date(Date.parse(days) + 7 * 86_400_000).toISOString().slice(0, 10)
  await page.getByRole('dialog').getByLabel('Day').fill(later)
  await expect(page.getByRole('dialog').getByLabel('On the sheet of').getByRole('option').first()).toBeAttached()
  await page.getByRole('dialog').getByLabel('Begins at').fill('12:30')
  await page.getByRole('dialog').getByRole('button', { name: 'Move' }).click()
  await anyway(page, 'Move')
  await expect(page.getByText('is moved.')).toBeVisible()
  await expect(page.getByRole('listitem').filter({ hasText: /6:00\sPM/ })).toHaveCount(0)
})

test('from the week a waiting job finds its places and is booked and promised in one step', async ({ page }) => {
  await signIn(page, 'dispatcher')
  await openJob(page, 'repair')
  const title = (await page.getByRole('heading', { level: 1 }).textContent()) ?? ''
  const label = title.replace('Repair at ', '')
  await page.getByRole('link', { name: 'Its week, town by town' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toContainText('When can we be in')
  await page.getByRole('link', { name: 'Next week' }).click()
  const best = page.getByRole('region', { name: 'Places this week' })
  await expect(best.getByRole('heading', { name: `Best places for Repair · ${label}` })).toBeVisible()
  const take = best.getByRole('button', { name: /^Book / }).first()
  await take.focus()
  await page.keyboard.press('Enter')
  const dialog = page.getByRole('dialog')
  await expect(dialog.getByLabel('Job')).toContainText(label)
  await dialog.getByLabel('Promised to the customer').check()
  await dialog.getByRole('button', { name: 'Book and promise' }).click()
  await anyway(page, 'Book')
  await expect(page.getByText(`Repair · ${label} is booked.`)).toBeVisible()
  await page.goBack()
  await page.goBack()
  await expect(page.getByText(/^Promised by telephone, /)).toBeVisible()
})
