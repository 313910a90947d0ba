import { expect, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'

test('a dispatcher asks when a crew can be in a town, changes the question by keyboard, and opens the sheet of a place', async ({
  page,
}) => {
  await signIn(page, 'dispatcher')
  await page.getByRole('navigation', { name: 'Main' }).getByRole('link', { name: 'Week' }).click()
  const question = page.getByRole('heading', { level: 1 })
  await expect(question).toContainText('When can we be in')
  // A weekend has no crews; next week has.
  await page.getByRole('link', { name: 'Next week' }).click()
  const best = page.getByRole('region', { name: 'Places this week' })
  await expect(best.getByRole('link').first()).toBeVisible()
  const towns = page.getByLabel('Town', { exact: true })
  const [, second] = await towns.getByRole('option').allTextContents()
  await towns.focus()
  await towns.selectOption(second ?? '')
  await expect(page).toHaveURL(new RegExp(`town=${encodeURIComponent(second ?? '').replaceAll('%20', '\\+')}`))
  await expect(page.getByRole('region', { name: `Waiting in ${second}` })).toBeVisible()
  // Ten hours with four people: nobody has them, and the page says what to do.
  await page.getByLabel('People').selectOption({ label: '4 people' })
  await expect(best).toContainText('No crew is near, free for that long and able to do it.')
  await page.getByLabel('Work', { exact: true }).selectOption({ label: 'an annual visit' })
  // What the work usually takes comes with it.
  await expect(page.getByLabel('People')).toHaveValue('1')
  const place = best.getByRole('link').first()
  const start = /, (.*?)( to|$)/.exec((await place.textContent()) ?? '')?.[1]
  expect(start).toBeTruthy()
  await place.click()
  await expect(page).toHaveURL(/day-sheets\?day=\d{4}-\d\d-\d\d&sheet=/)
  await expect(page.locator('[data-open]')).toBeVisible()
})
