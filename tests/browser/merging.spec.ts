import { expect, type Page, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test.setTimeout(240_000)

/** Names of this run's own, so that the journey can be walked again in the same demo company. */
const run = Date.now().toString(36)

async function addSite(page: Page, customer: string, street: string, town: string): Promise<string> {
  await page.goto('/sites/new')
  await page.getByRole('textbox', { name: 'Customer', exact: true }).fill(customer)
  await page.getByRole('textbox', { name: 'Street' }).fill(street)
  await page.getByRole('textbox', { name: 'Town' }).fill(town)
  await page.getByRole('textbox', { name: 'Tank' }).fill('10x54')
  await page.getByRole('button', { name: 'Save the site' }).click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(street, { timeout: 30_000 })
  return page.url()
}

/** The one that a label chooses, by typing how it begins. */
async function pick(page: Page, label: string, name: string) {
  await page.getByRole('textbox', { name: label }).fill(name)
  await page
    .getByRole('list', { name: label })
    .getByRole('button', { name: `Choose ${name}` })
    .click()
}

test('two customers who are one are merged by pressing, seen as one with the houses of both, and parted again after it was said what stays', async ({
  page,
}) => {
  const [kept, gone] = [`Harlan Poe ${run}`, `Harlen Poe ${run}`]
  const [first, second] = [`Elm Row 1 ${run}`, `Elm Row 2 ${run}`]
  await signIn(page, 'owner')
  const one = await addSite(page, kept, first, 'Larkmoor')
  const two = await addSite(page, gone, second, 'Larkmoor')

  await page.goto('/archive')
  await pick(page, 'Keep', kept)
  await pick(page, 'Merge into it', gone)
  await page.getByRole('button', { name: 'Merge', exact: true }).click()
  await expect(page.getByText('Merged. You can undo it below.')).toBeVisible()
  for (const [address, street] of [
    [one, first],
    [two, second],
  ] as const) {
    await page.goto(address)
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(street)
    await expect(page.getByRole('heading', { name: kept })).toBeVisible()
    await expect(page.getByRole('article')).toBeVisible()
  }
  await page.goto('/sites')
  await page.getByRole('searchbox').last().fill(gone)
  await expect(page.getByText(gone)).toHaveCount(0)

  // Whoever came later stays with the one that was kept.
  await page.goto(one)
  await page.getByRole('button', { name: 'Add a contact' }).click()
  const form = page.getByRole('dialog', { name: 'Add a contact' })
  await form.getByLabel('Name').fill('Next door')
  await form.getByRole('textbox', { name: 'Phone', exact: true }).fill('(630) 555-0144')
  await form.getByLabel('More phones').fill('(630) 555-0145\n(630) 555-0146')
  await form.getByRole('button', { name: 'Save' }).click()
  await expect(page.getByRole('link', { name: '(630) 555-0146' })).toBeVisible()

  await page.goto('/archive')
  await page.getByRole('button', { name: `Undo merging ${gone}` }).press('Enter')
  const ask = page.getByRole('dialog', { name: `Undo merging ${gone}?` })
  await expect(ask.getByRole('heading', { name: `Goes back to ${gone}` })).toBeVisible()
  await expect(ask.getByText(`1 site held (${second})`)).toBeVisible()
  await expect(ask.getByRole('heading', { name: `Stays with ${kept}, because it came later` })).toBeVisible()
  await expect(ask.getByText('1 contact (Next door)')).toBeVisible()
  await ask.getByRole('button', { name: 'Undo merge' }).press('Enter')
  await expect(ask).toHaveCount(0, { timeout: 30_000 })
  await page.goto(two)
  await expect(page.getByRole('heading', { name: gone })).toBeVisible()
  await page.goto(one)
  await expect(page.getByRole('heading', { name: kept })).toBeVisible()
})

test('a town that is spelt in two ways becomes one by pressing, and two again', async ({ page }) => {
  const [town, lower] = [`Brackwater ${run}`, `brackwater ${run}`]
  await signIn(page, 'owner')
  await addSite(page, `Ida Orr ${run}`, `Weir Row 1 ${run}`, town)
  const two = await addSite(page, `Otis Orr ${run}`, `Weir Row 2 ${run}`, lower)
  await page.goto('/archive')
  await page.getByRole('radio', { name: 'Town' }).check()
  await page.getByLabel('Keep').selectOption({ label: `${town} (1)` })
  await page.getByLabel('Merge into it').selectOption({ label: `${lower} (1)` })
  await page.getByRole('button', { name: 'Merge', exact: true }).click()
  await expect(page.getByText('Merged. You can undo it below.')).toBeVisible()
  await page.goto(two)
  await expect(page.getByText(town).first()).toBeVisible()
  // A pattern, which tells capitals apart.
  await expect(page.getByText(new RegExp(lower))).toHaveCount(0)
  await page.goto('/archive')
  await page.getByRole('button', { name: `Undo merging ${lower}` }).click()
  await page.getByRole('dialog').getByRole('button', { name: 'Undo merge' }).click()
  await page.goto(two)
  await expect(page.getByText(new RegExp(lower)).first()).toBeVisible()
})
