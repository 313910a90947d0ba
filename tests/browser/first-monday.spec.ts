import { expect, type Locator, type Page, test } from '@playwright/test'
import { invite, join, press, setUp } from '../support/own-company.ts'
import { uglyList } from '../support/ugly-list.ts'

const COMPANY = 'Orchard Gate Water'
const DAY_MS = 86_400_000
const isoDay = (at: number) => new Date(at).toISOString().slice(0, 10)
const whole = (count: number) => count.toLocaleString('en-US')

/** Types into a field and goes on with Enter. */
async function answer(page: Page, field: Locator, text: string) {
  await field.focus()
  await field.fill(text)
  await page.keyboard.press('Enter')
}

test('a company with nothing but its own list: set up, two people in, the list checked and written by keyboard, and as many beds watched as the list holds', async ({
  page,
  browser,
}) => {
  test.setTimeout(240_000)
  const list = uglyList(7, new Date().getFullYear())
  await setUp(page, COMPANY, { name: 'Maeve Orchard', email: 'maeve@orchardgate.example' })
  await page.goto('/crews')
  const [toDell, toTomas] = [await invite(page, 'Dell Brook', 'dispatcher'), await invite(page, 'Tomas Lund', 'technician')]
  const dell = await join(browser, COMPANY, toDell, 'dell@orchardgate.example')
  const tomas = await join(browser, COMPANY, toTomas, 'tomas@orchardgate.example')
  await expect(tomas).toHaveURL(/today/)

  // Brought in by its owner, by keyboard; what will happen is what the list holds, counted while it was made.
  await page.goto('/imports')
  const file = { name: 'customer book.csv', mimeType: 'text/csv', buffer: Buffer.from(list.bytes) }
  await page.getByLabel('Spreadsheet to import').setInputFiles(file)
  await expect(page.getByRole('heading', { name: 'What each column holds' })).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText(`${whole(list.lines)} rows.`)).toBeVisible()
  await expect(page.getByLabel('What Rte holds')).toHaveValue('')
  for (const [heading, field] of [
    ['Put in', 'installed'],
    ['Size', 'tank'],
    ['Hard', 'hardness'],
    ['Remarks', 'notes'],
    ['Last visit', 'lastSeen'],
    ['Cell', 'otherPhone'],
  ])
    await expect(page.getByLabel(`What ${heading} holds`)).toHaveValue(field ?? '')
  await press(page, 'Check the rows')
  const question = page.getByRole('heading', { name: 'When was this list last right, and were these softeners working then?' })
  await expect(question).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText(`Nothing says when ${whole(list.unseen)} beds last worked.`)).toBeVisible()
  await answer(page, page.getByLabel('The list was right on'), isoDay(Date.now() - 30 * DAY_MS))
  await expect(page.getByText('Softeners without a visit of their own count as seen working on')).toBeVisible({ timeout: 60_000 })
  await expect(
    page.getByText(`${whole(list.customers)} customers, ${whole(list.sites)} sites, ${whole(list.softeners)} softeners`),
  ).toBeVisible()
  await expect(
    page.getByText(`${list.decide} rows to decide about, ${list.leftEmpty} rows with a cell left empty, ${list.leftOut} rows left out.`),
  ).toBeVisible()
  await press(page, /^Import [\d,]+ rows$/)
  await expect(page.getByRole('heading', { name: 'Imported' })).toBeVisible({ timeout: 120_000 })

  // Each bed of the list and no other is forecast: twins count twice, a rebed in the remarks once, and a house that stands twice once.
  await page.goto('/coming-due')
  await expect(page.getByText(`${whole(list.beds)} beds in service.`)).toBeVisible({ timeout: 120_000 })
  await tomas.context().close()
  await dell.context().close()
})
