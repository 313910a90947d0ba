import path from 'node:path'
import { expect, test } from '@playwright/test'
import { expectAccessible } from '../support/accessible.ts'
import { workbook } from '../support/hostile-files.ts'
import { signIn } from '../support/sign-in.ts'

const SHEETS = path.resolve(import.meta.dirname, '../../prisma/demo/spreadsheets')

test('the owner brings in a messy workbook, and sees a bed of it forecast', async ({ page }) => {
  test.setTimeout(180_000)
  await signIn(page, 'owner')
  await page.goto('/imports')
  await page.getByLabel('Spreadsheet to import').setInputFiles(path.join(SHEETS, 'messy-customers.xlsx'))
  await expect(page.getByRole('heading', { name: 'What each column holds' })).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText('The sheet "Customers" was read')).toBeVisible()

  // The route means nothing to the almanac; whatever was suggested, the owner leaves it out. Hardness gets its unit.
  await page.getByLabel('What Route holds').selectOption({ label: 'leave out' })
  await expect(page.getByLabel('What Tank size holds')).toHaveValue('tank')
  await page.getByLabel('Hard.: A number without a unit is in').selectOption('gpg')
  await expectAccessible(page, 'the columns of an import')
  await page.getByRole('button', { name: 'Check the rows' }).click()

  await expect(page.getByRole('heading', { name: 'What will happen to the rows' })).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText('5 rows with a cell left empty, 1 row left out.')).toBeVisible()
  await expect(page.getByText('very hard', { exact: true })).toBeVisible()
  await expect(page.getByText('Two rows are the same site when')).toBeVisible()
  await expectAccessible(page, 'the check of an import')
  const download = page.waitForEvent('download')
  await page.getByRole('link', { name: 'Download these rows' }).click()
  expect((await download).suggestedFilename()).toBe('messy-customers - rows to fix.csv')

  await page.getByRole('button', { name: /^Import \d+ rows$/ }).click()
  await expect(page.getByRole('heading', { name: 'Imported' })).toBeVisible({ timeout: 90_000 })

  await page.getByRole('link', { name: 'See the sites' }).click()
  await page.getByRole('searchbox').fill('Bakehouse')
  await expect(page.getByText('One site matches')).toBeVisible()
  await page.getByRole('link', { name: '1 Mill Rd' }).first().click()
  await page
    .getByRole('link', { name: /14 × 65 in/ })
    .first()
    .click()
  await expect(page.getByText(/^import messy-customers\.xlsx, line \d+$/).first()).toBeVisible()
  // Forecast by the worker within seconds of the import; the page is told by itself.
  await expect(page.getByRole('heading', { name: /Due about/ })).toBeVisible({ timeout: 60_000 })
})

test('a file that no list is gets a sentence, and the page goes on', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/imports')
  const bring = (name: string, bytes: Uint8Array) =>
    page.getByLabel('Spreadsheet to import').setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(bytes) })
  const row = (at: string, line: number) => `<row r="${line}"><c r="${at}" t="inlineStr"><is><t>Ann Poe</t></is></c></row>`
  await bring('stray.xlsx', workbook(row('A1', 1) + row('XFD1048576', 1_048_576)))
  await expect(page.getByText('The list reaches to cell XFD1048576.')).toBeVisible({ timeout: 30_000 })
  await bring('long.csv', new TextEncoder().encode(`Name,Street\nAnn Poe,${'x'.repeat(5_000)}\n`))
  await expect(page.getByText('The cell in line 2, column B holds 5,000 characters')).toBeVisible({ timeout: 30_000 })
  // What was refused stays on the list, and says so there.
  await page.goto('/imports')
  await expect(page.getByRole('row', { name: /long\.csv/ })).toContainText('could not be read')
  await page.getByRole('link', { name: 'long.csv' }).click()
  await page.getByRole('button', { name: 'Discard this list' }).click()
  await page.getByRole('button', { name: 'Discard it' }).click()
  await expect(page.getByRole('row', { name: /stray\.xlsx/ })).toBeVisible()
  await expect(page.getByRole('row', { name: /long\.csv/ })).toHaveCount(0)
  await bring('fair.csv', new TextEncoder().encode('Name,Street\nAnn Poe,1 Elm St\n'))
  await expect(page.getByRole('heading', { name: 'What each column holds' })).toBeVisible({ timeout: 60_000 })
  // Read otherwise than its owner reads it: no line names the columns.
  await page.getByText('Wrong headings?').click()
  await page.getByLabel('Line with the headings').fill('top')
  await expect(page.getByText('Type the number of a line, such as 4.')).toBeVisible()
  await page.getByLabel('Line with the headings').fill('')
  await page.getByRole('button', { name: 'Read the file like this' }).click()
  await expect(page.getByText('No line names the columns, as you chose.')).toBeVisible({ timeout: 60_000 })
  await expect(page.getByText('2 rows.')).toBeVisible()
})
