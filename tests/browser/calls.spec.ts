import AxeBuilder from '@axe-core/playwright'
import { expect, type Locator, type Page, test } from '@playwright/test'
import { someCustomer } from '../support/head-search.ts'
import { signIn } from '../support/sign-in.ts'

/** Counts what a hand does beside typing: each press of the mouse, and each key that types nothing. */
function hand(page: Page) {
  let presses = 0
  return {
    press: async (name: string | RegExp, role: 'button' | 'radio' | 'option' = 'button') => {
      presses++
      const target = page.getByRole('dialog').or(page.getByRole('banner')).getByRole(role, { name })
      await (role === 'radio' ? target.first().check() : target.first().click())
    },
    key: async (key: string) => {
      presses++
      await page.keyboard.press(key)
    },
    /** Ends a call: never more than six presses beside the typing. */
    ends: async () => {
      await expect(page.getByText(/^Call kept/).first()).toBeVisible()
      expect(presses).toBeLessThanOrEqual(6)
    },
  }
}

const dialog = (page: Page) => page.getByRole('dialog', { name: 'Record a call' })

/** Goes on by Tab until something has the focus. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let n = 0; n < 25; n++) {
    if (await target.evaluate((element) => element === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error('25 tabs did not lead there')
}

/** Opens a call and takes the first who is found. */
async function callFrom(page: Page, typed: string, by: ReturnType<typeof hand>): Promise<void> {
  await by.press('Record a call')
  await page.keyboard.type(typed)
  await expect(dialog(page).getByRole('option').first()).toBeVisible()
  await by.key('Enter')
  await expect(dialog(page).getByRole('button', { name: 'Someone else' })).toBeVisible()
}

test.beforeEach(async ({ page }) => {
  await signIn(page, 'dispatcher')
  await page.goto('/jobs')
})

test('beads in the tap end as an emergency for today, with its places on the page that opens', async ({ page }) => {
  const { label, customer } = await someCustomer(page)
  const by = hand(page)
  await callFrom(page, `${label} ${customer}`, by)
  expect((await new AxeBuilder({ page }).include('dialog').analyze()).violations).toEqual([])
  await by.press('Beads in the tap', 'radio')
  await dialog(page).getByLabel('In their words').fill('brown beads in the kitchen tap')
  await by.press('Emergency, today', 'radio')
  await by.press('Keep call')
  await by.ends()
  await expect(page.getByRole('heading', { name: /^Emergency at / })).toBeVisible()
  await expect(page.getByText('Beads in the tap. brown beads in the kitchen tap')).toBeVisible()
})

test('somebody on no record, who wants a quote, is kept by name and number, and is called by keyboard alone', async ({ page }) => {
  await expect(page.getByText(/^(Reading|Loading)/)).toHaveCount(0)
  await page.keyboard.press('c')
  await expect(dialog(page)).toBeVisible()
  await page.keyboard.type('Zebediah Quenby')
  await expect(dialog(page).getByRole('option', { name: /Not on record/ })).toBeVisible()
  await page.keyboard.press('End')
  await page.keyboard.press('Enter')
  const phone = dialog(page).getByLabel('Phone')
  await expect(dialog(page).getByLabel('Name', { exact: true })).toHaveValue('Zebediah Quenby')
  await tabTo(page, phone)
  await page.keyboard.type('555 0170')
  await tabTo(page, dialog(page).getByRole('radio', { name: 'Nothing more' }))
  // Up from the first is the last: a quote.
  await page.keyboard.press('ArrowUp')
  await expect(dialog(page).getByRole('radio', { name: 'Quote later' })).toBeChecked()
  await page.keyboard.press('Enter')
  await expect(page.getByText('Call kept.')).toBeVisible()
  await page.goto('/calls')
  const row = page.getByRole('listitem').filter({ hasText: 'Zebediah Quenby' }).first()
  await expect(row).toContainText('Quote owed')
  await expect(row.getByRole('link', { name: '555 0170' })).toHaveAttribute('href', 'tel:5550170')
  await row.getByRole('button', { name: 'Talked to Zebediah Quenby' }).press('Enter')
  await expect(page.getByText('Called Zebediah Quenby.')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Talked to Zebediah Quenby' })).toHaveCount(0)
})

test('“still fine” on the site’s own page is a sighting of that day, and a call-back for today is due first', async ({ page }) => {
  const { siteId } = await someCustomer(page)
  await page.goto(`/sites/${siteId}`)
  await expect(page.getByRole('heading', { name: 'Calls' })).toBeVisible()
  // One press on the site's page is such a call as well.
  await page
    .getByRole('button', { name: /^Still fine today: / })
    .first()
    .press('Enter')
  await expect(page.getByText('Call kept: still fine today.')).toBeVisible()
  const by = hand(page)
  await by.press('Record a call')
  const soft = dialog(page).getByRole('radio', { name: 'Still fine today' })
  await expect(soft).toBeVisible()
  await by.press('Still fine today', 'radio')
  await by.press('Call back', 'radio')
  await by.press('Keep call')
  await by.ends()
  const calls = page
    .getByRole('region', { name: 'Calls' })
    .or(page.locator('section', { has: page.getByRole('heading', { name: 'Calls' }) }))
  await expect(calls.getByText('Water still soft').first()).toBeVisible()
  await expect(calls.getByRole('button', { name: /^Talked to / }).first()).toBeVisible()
})

test('a visit promised by telephone is asked about before it comes off, stands on the list, and is given back by Undo', async ({
  page,
}) => {
  const { label, customer } = await someCustomer(page)
  const by = hand(page)
  await callFrom(page, `${label} ${customer}`, by)
  await by.press('Repair', 'radio')
  await by.press('Keep call')
  await by.ends()
  // Late in the day the first place may be past the crew's hours, which is asked about.
  await page
    .getByRole('listitem')
    .filter({ hasNotText: 'overtime' })
    .getByRole('button', { name: /^Book / })
    .first()
    .click()
  await expect(page.getByText('is booked.')).toBeVisible()
  await page.getByRole('button', { name: 'Promise a time' }).click()
  await page.getByRole('button', { name: 'Promise', exact: true }).click()
  await expect(page.getByText(/^Promised by telephone, .*, by /)).toBeVisible()
  await page.locator('a[href^="/day-sheets?day="]').first().click()
  await expect(page.getByText(/promised \d/).first()).toBeVisible()
  await page.getByRole('button', { name: `Take off sheet: Repair · ${label}` }).click()
  await expect(page.getByRole('dialog')).toContainText('The customer was promised')
  await page.getByRole('button', { name: 'Take off anyway' }).click()
  await expect(page.getByText('is off the sheet.')).toBeVisible()
  const second = await page.context().newPage()
  await second.goto('/calls')
  const row = second.getByRole('listitem').filter({ hasText: 'We promised the repair' }).first()
  await expect(row).toContainText('Today')
  await page.getByRole('button', { name: 'Undo' }).last().click()
  await expect(second.getByText('We promised the repair')).toHaveCount(0, { timeout: 8_000 })
})
