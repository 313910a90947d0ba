import fs from 'node:fs'
import { expect, type Page, test } from '@playwright/test'
import { Uint8ArrayReader, ZipReader } from '@zip.js/zip.js'
import { signIn } from '../support/sign-in.ts'

test.setTimeout(240_000)

/** A name of this run's own, so that the journey can be walked again in the same demo company. */
const own = () => `Tumbler ${Date.now().toString(36)}`

async function addSite(page: Page, name: string): Promise<string> {
  await page.goto('/sites/new')
  await page.getByRole('textbox', { name: 'Customer', exact: true }).fill(`Zebulon ${name}`)
  await page.getByRole('textbox', { name: 'Phone' }).fill('(630) 555-0199')
  await page.getByRole('textbox', { name: 'Street' }).fill('Weir Row 7')
  await page.getByRole('textbox', { name: 'Tank' }).fill('10x54')
  await page.getByRole('button', { name: 'Save the site' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Weir Row 7', { timeout: 30_000 })
  return page.url()
}

test('the owner exports everything: the file appears by itself, and is a whole archive', async ({ page }) => {
  await signIn(page, 'owner')
  await page.goto('/exports')
  await page.getByRole('button', { name: 'Export everything' }).click()
  const link = page.getByRole('link', { name: 'Download' }).first()
  await expect(link).toBeVisible({ timeout: 150_000 })
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()])
  expect(download.suggestedFilename()).toMatch(/^everything-\d{4}-\d{2}-\d{2}\.zip$/)
  const zip = new ZipReader(new Uint8ArrayReader(fs.readFileSync(await download.path())))
  const names = (await zip.getEntries()).map((entry) => entry.filename)
  expect(names).toEqual(expect.arrayContaining(['company.json', 'csv/site.csv', 'json/bed.jsonl', 'read-me.txt']))
})

test('a softener is archived for a reason and brought back; the trail says so; then the customer is erased', async ({ page }) => {
  const name = own()
  await signIn(page, 'owner')
  const address = await addSite(page, name)

  await page.getByRole('article').getByRole('button', { name: 'Edit' }).click()
  await page.getByRole('button', { name: 'Archive softener' }).click()
  const ask = page.getByRole('dialog', { name: 'Archive softener?' })
  await expect(ask.getByRole('button', { name: 'Archive softener' })).toBeDisabled()
  await ask.getByLabel('Reason').selectOption({ label: 'Unit removed' })
  await ask.getByRole('button', { name: 'Archive softener' }).click()
  await expect(page.getByText('No softener entered yet')).toBeVisible({ timeout: 30_000 })

  await page.goto('/archive')
  const row = page.getByRole('row', { name: /Weir Row 7, .*Unit removed/ })
  await expect(row).toHaveCount(1)
  await row.getByRole('button', { name: /Bring back/ }).click()
  await expect(row).toHaveCount(0, { timeout: 30_000 })

  await page.goto(address)
  await expect(page.getByRole('article')).toBeVisible()
  await page.getByRole('link', { name: 'Who changed what here' }).click()
  await expect(page.getByRole('row', { name: /Softener archived .*Unit removed/ })).toBeVisible()
  await expect(page.getByRole('row', { name: /Softener brought back/ })).toBeVisible()
  await expect(page.getByText(name)).toHaveCount(0)

  await page.goto(address)
  await page.getByRole('button', { name: 'Edit customer' }).click()
  await expect(page.getByRole('dialog', { name: 'Edit customer' })).toBeVisible()
  await page.getByRole('button', { name: 'Erase for good' }).click()
  const erase = page.getByRole('dialog', { name: /^Erase Zebulon/ })
  await expect(erase.getByRole('button', { name: 'Erase for good' })).toBeDisabled()
  await erase.getByLabel('I know this can’t be undone').check()
  await erase.getByRole('button', { name: 'Erase for good' }).click()
  const done = page.getByRole('dialog', { name: 'Erased' })
  await expect(done).toBeVisible({ timeout: 60_000 })
  await done.getByRole('button', { name: 'Close', exact: true }).last().click()
  await expect(page.getByRole('heading', { name: 'Erased customer' })).toBeVisible()
  await page.reload()
  await expect(page.getByText(name)).toHaveCount(0)
  await expect(page.getByRole('article')).toBeVisible()
  await page.goto('/exports')
  await expect(page.getByRole('link', { name: 'Download' })).toHaveCount(0)
})
