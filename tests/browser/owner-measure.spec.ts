import { expect, test } from '@playwright/test'
import { expectAccessible } from '../support/accessible.ts'
import { someCustomer } from '../support/head-search.ts'
import { signIn } from '../support/sign-in.ts'

test('an owner measures their tank on a phone while the office watches; a link that is ended takes nothing', async ({ page, browser }) => {
  await signIn(page, 'dispatcher')
  await page.goto('/jobs')
  const { siteId, customer } = await someCustomer(page)
  await page.goto(`/sites/${siteId}`)
  const make = page.getByRole('button', { name: /^Make a (measuring )?link/ }).first()
  await expect(make).toBeVisible()
  // Another journey may have left a link here, which the new one ends.
  const field = page.getByLabel('The owner’s link').first()
  const before = (await field.count()) > 0 ? await field.inputValue() : ''
  await make.click()
  await expect(field).not.toHaveValue(before)
  const link = await field.inputValue()
  const path = new URL(link).pathname

  // The owner's phone: no session, no name, and nothing sent by looking.
  const phone = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' })
  const owner = await phone.newPage()
  await owner.goto(path)
  const head = owner.getByRole('heading', { level: 1 })
  await expect(head).toHaveText('First, around the tank')
  await expect(owner.getByRole('img', { name: /tape all the way around/ })).toBeVisible()
  await expect(owner.getByText(customer)).toHaveCount(0)
  await expectAccessible(owner, 'the owner’s measuring page')
  await owner.setViewportSize({ width: 390, height: 844 })
  expect(await owner.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  await expect(page.getByText('Nothing measured yet.')).toBeVisible()

  await owner.getByLabel('Around the tank').fill('a hand')
  await owner.getByRole('radio', { name: 'in', exact: true }).check()
  await owner.getByRole('button', { name: 'Send', exact: true }).click()
  await expect(owner.getByText(/We couldn’t read that/)).toBeVisible()
  await owner.getByLabel('Around the tank').fill('31 1/2')
  await owner.getByRole('radio', { name: 'in', exact: true }).check()
  await owner.getByRole('button', { name: 'Send', exact: true }).click()

  // It is on the office's open page by itself, before the owner goes on.
  await expect(head).toHaveText('Now, how tall it is')
  const measured = page.getByRole('list', { name: /^Measured by the owner/ }).first()
  await expect(measured.getByText(/Around the tank/)).toContainText('about 10')
  await owner.getByLabel('Height of the tank').fill('122')
  await owner.getByRole('radio', { name: 'cm', exact: true }).check()
  await owner.getByRole('button', { name: 'Send', exact: true }).click()
  await expect(head).toHaveText('Thank you')
  await expect(measured.getByText(/Height without the valve/)).toContainText('48')
  await owner.getByRole('link', { name: 'Español' }).click()
  await expect(owner.getByText(/Mida|Gracias|Primero/).first()).toBeVisible()

  await page.getByRole('button', { name: 'End the link' }).first().click()
  await expect(page.getByText(/; ended$/).first()).toBeVisible()
  await owner.goto(path)
  await expect(head).toHaveText('This link no longer works.')
  await phone.close()
})
