import { expect, test } from '@playwright/test'
import { expectAccessible } from '../support/accessible.ts'
import { signIn } from '../support/sign-in.ts'

test.setTimeout(240_000)

/** Names of this run's own, so that the journey can be walked again in the same demo company. */
const run = Date.now().toString(36)
const LIST = `No,Name,Street,Town,Tank,Installed,Water supply
${run}1,Ann Poe,Weir Row 8 ${run},Lark,10x54,2012,mains ${run}
${run}2,Bo Dow,Weir Row 9 ${run},Lark,9x48,2014,mains ${run}
${run}3,Cy Fay,Mill Row 3 ${run},Lark,10x54,2016,own well
${run}4,Di Gow,Mill Row 4 ${run},Lark,10x54,2018,own well
`

test('the supplies a list names are shown, one is put on a supply on record, each well is a home’s own, and two names of one water are merged', async ({
  page,
}) => {
  await signIn(page, 'owner')
  const bring = async (name: string, text: string) => {
    await page.goto('/imports')
    await page.getByLabel('Spreadsheet to import').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) })
    await expect(page.getByRole('heading', { name: 'What each column holds' })).toBeVisible({ timeout: 60_000 })
    await page.getByRole('button', { name: 'Check the rows' }).click()
    await expect(page.getByRole('heading', { name: 'Which water these names mean' })).toBeVisible({ timeout: 60_000 })
  }
  await bring('supplies.csv', LIST)
  const means = page.getByLabel(`What mains ${run} means`)
  await expect(means).toHaveValue('named')
  await expect(page.getByLabel('What own well means')).toHaveValue('own-wells')
  await expectAccessible(page, 'the supplies of an import')
  await page.getByRole('button', { name: /^Import 4 rows$/ }).click()
  await expect(page.getByRole('heading', { name: 'Imported' })).toBeVisible({ timeout: 90_000 })

  // Another list calls the same water something else: it is put on what is on record, and that is remembered.
  const other = LIST.replaceAll(`mains ${run}`, `town ${run}`).replaceAll('Row 8', 'Row 18').replaceAll(`${run}1,`, `${run}11,`)
  await bring('other.csv', other)
  await page.getByLabel(`What town ${run} means`).selectOption({ label: `mains ${run}` })
  // What is chosen and not used yet holds the import up: it would be lost.
  await expect(page.getByRole('button', { name: /^Import 4 rows$/ })).toBeDisabled()
  await page.getByRole('button', { name: 'Use these supplies' }).click()
  await expect(page.getByRole('row', { name: new RegExp(`^town ${run}`) })).toContainText('Chosen by you.')
  await page.getByRole('button', { name: /^Import 4 rows$/ }).click()
  await expect(page.getByRole('heading', { name: 'Imported' })).toBeVisible({ timeout: 90_000 })
  await bring('third.csv', other)
  await expect(page.getByRole('row', { name: new RegExp(`^town ${run}`) })).toContainText('As you chose it for an earlier list.')

  // Two of the wells turn out to be one.
  await page.goto('/archive')
  await page.getByText('Water supply', { exact: true }).click()
  await page.getByLabel('Keep').selectOption({ label: `Well at Mill Row 3 ${run}` })
  await page.getByLabel('Merge into it').selectOption({ label: `Well at Mill Row 4 ${run}` })
  await page.getByRole('button', { name: 'Merge', exact: true }).click()
  await expect(page.getByText('Merged. You can undo it below.')).toBeVisible()
  const merged = page.getByRole('row', { name: new RegExp(`^Well at Mill Row 4 ${run}`) })
  await expect(merged).toContainText(`Well at Mill Row 3 ${run}`)
  await merged.getByRole('button', { name: /^Undo/ }).click()
  await expect(page.getByRole('dialog')).toContainText(`Mill Row 4 ${run}`)
})
