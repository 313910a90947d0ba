import fs from 'node:fs/promises'
import { expect, type Page, test } from '@playwright/test'
import { extractText, getDocumentProxy } from 'unpdf'
import { DEMO_PEOPLE, signIn, signInByForm } from '../support/sign-in.ts'

// Some pages, two people and a file each.
test.setTimeout(180_000)

/** Presses the button of the page and reads the file that comes, page by page. */
async function downloadPlan(page: Page): Promise<{ name: string; pages: string[] }> {
  const [download] = await Promise.all([
    page.waitForEvent('download', { timeout: 60_000 }),
    page.getByRole('link', { name: 'Rebed plan (PDF)' }).click(),
  ])
  const pdf = await getDocumentProxy(new Uint8Array(await fs.readFile(await download.path())))
  const { text } = await extractText(pdf, { mergePages: false })
  return { name: download.suggestedFilename(), pages: text.map((one) => one.replace(/\s+/g, ' ')) }
}

/** Goes from the list of coming beds to the first one's page, and gives its address. */
async function openFirstBed(page: Page): Promise<string> {
  await page.goto('/coming-due?list=all')
  await page.locator('a[href^="/beds/"]').first().click({ timeout: 30_000 })
  await expect(page.getByRole('link', { name: 'Rebed plan (PDF)' })).toBeVisible({ timeout: 30_000 })
  return new URL(page.url()).pathname
}

test('the owner takes a bed’s rebed plan to paper; a technician has it from the visit; another firm gets nothing', async ({
  page,
  browser,
}) => {
  await signIn(page, 'owner')
  const bed = await openFirstBed(page)
  const site = (await page.getByRole('heading', { level: 1 }).textContent()) ?? ''
  const { name, pages } = await downloadPlan(page)
  expect(name).toMatch(/^rebed-plan-.+\.pdf$/)
  expect(pages).toHaveLength(3)
  expect(pages[0]).toContain(`Rebed plan: ${site.replace(/, tank \d+$/, '')}`)
  expect(pages[0]).toMatch(/cut tube here/)
  expect(pages[0]).toMatch(/crosslink|softening resin/)
  expect(pages[1]?.indexOf('Relieve the pressure')).toBeGreaterThan(0)
  expect(pages[1]?.indexOf('Unplug the valve')).toBeGreaterThan(pages[1]?.indexOf('Relieve the pressure') ?? Number.NaN)
  expect(pages[1]).toContain('The local plumbing code and a licensed person come before anything on this sheet')

  const technician = await (await browser.newContext()).newPage()
  await signIn(technician, 'technician')
  await technician.getByRole('link', { name: /Rebed/ }).first().click()
  await expect(technician.getByRole('heading', { level: 1 })).toContainText('Rebed at')
  const own = await downloadPlan(technician)
  expect(own.pages).toHaveLength(3)
  expect(own.pages[0]).toContain('Kit')

  const other = DEMO_PEOPLE.find((one) => one.company !== DEMO_PEOPLE[0]?.company && one.role === 'owner')
  if (!other) throw new Error('the demo has no second firm')
  const stranger = await (await browser.newContext()).newPage()
  await signInByForm(stranger, other)
  const refused = await stranger.request.get(`/api${bed}/plan`)
  expect(refused.status()).toBe(404)
  expect(refused.headers()['content-type']).toContain('application/json')
})

test('which resin, which way, who: prices typed here give an answer with its doubt, and nobody is told to do it alone unasked', async ({
  page,
}) => {
  await signIn(page, 'owner')
  await openFirstBed(page)
  await page.getByRole('link', { name: 'Rebed options' }).click()
  await expect(page.getByRole('heading', { name: 'Which resin?' })).toBeVisible({ timeout: 30_000 })
  await page.getByRole('textbox', { name: /A planned rebed with 8% costs/ }).fill('620')
  await page.getByRole('textbox', { name: 'A cleaning costs' }).fill('250')
  await page.getByRole('textbox', { name: 'A new unit, installed, costs' }).fill('2400')
  await expect(page).toHaveURL(/rebed=620&clean=250&unit=2400/)
  await expect(page.getByRole('img', { name: /^Cost a year of each way: Rebed \$\d+ to \$\d+ a year, middle \$\d+/ })).toBeVisible()
  await page.getByRole('button', { name: 'Show as table' }).last().click()
  await expect(page.getByRole('row', { name: /Replace the unit/ })).toBeVisible()

  await expect(page.getByText('Can’t say yet')).toBeVisible()
  await page.getByLabel('How is the softener reached?').selectOption('Over stairs')
  await expect(page.getByText('Leave this to our crew.')).toBeVisible()
})
