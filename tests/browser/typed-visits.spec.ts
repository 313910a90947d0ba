import { expect, type Page, test } from '@playwright/test'
import { signIn } from '../support/sign-in.ts'
import { startVisit } from '../support/start-visit.ts'
import { drive, HARDNESS, halves, NO_NUMBER, saidOf, twelveHundred } from '../support/typed-texts.ts'

test.describe.configure({ timeout: 240_000 })

const exactly = (within: Page, label: string) => within.getByLabel(label, { exact: true })

test('pages that keep nothing read the same numbers', async ({ page }) => {
  await signIn(page, 'technician')
  await page.goto('/sites')
  await page
    .getByRole('row')
    .filter({ hasText: /\d+ × \d+ in/ })
    .first()
    .getByRole('link')
    .first()
    .click()
  await page.getByRole('link', { name: 'Settings card' }).first().click()
  await drive(exactly(page, 'Hardness, raw'), HARDNESS)
  await exactly(page, 'Hardness, raw').fill('17 °dH')
  // 17 °dH is 17.72 gpg: 10 mg/L of CaO a degree.
  await expect(page).toHaveURL(/hardness=17\.72/)

  const warmest = exactly(page, 'Warmest water')
  const tooWarm = { ...twelveHundred(/the most is 110/), '99999': /the most is 110/ }
  await drive(warmest, { abc: NO_NUMBER.abc, '−3': /the least is 32/, ...halves(/the least is 32/), ...tooWarm })
  await page.getByText(/^What uses water/).click()
  await drive(exactly(page, 'Kitchen sink'), {
    ...NO_NUMBER,
    ...halves(/whole number/),
    ...twelveHundred(/the most is 200/),
    '99999': /the most is 200/,
  })

  await page.goto('/whats-wrong')
  const next = page.locator('section').filter({ has: page.getByRole('heading', { name: 'Next check' }) })
  await next.getByRole('button', { name: 'None' }).click()
  await page.locator('#all-outlet > summary').click()
  await page.locator('#all-outlet').getByText('Or as measured').click()
  await drive(exactly(page, 'At the valve outlet'), HARDNESS)

  await page.goto('/which-tank')
  await drive(exactly(page, 'Floor to the rim, without the valve'), {
    ...NO_NUMBER,
    ...halves(/left out/),
    ...twelveHundred(/left out/),
    '99999': /left out/,
  })
  await exactly(page, 'Floor to the rim, without the valve').fill('4 ft 6 in')
  await expect(page).toHaveURL(/rim=4\+ft\+6\+in/)
})

test('a visit: a required measurement does not pass with "abc", and an unusual one is asked back', async ({ page }) => {
  await signIn(page, 'technician')
  await page.goto('/today')
  await page
    .getByRole('link', { name: /Annual visit/ })
    .first()
    .click()
  await startVisit(page)
  const raw = exactly(page, 'Raw water hardness')
  const heading = page.getByRole('heading', { level: 1 })
  await expect(page.getByRole('button', { name: 'Next step' })).toBeVisible()
  for (let step = 0; step < 12 && (await raw.count()) === 0; step++) {
    const title = (await heading.textContent()) ?? ''
    for (const box of await page.getByRole('checkbox').all()) await box.check()
    for (const group of await page.locator('fieldset').all())
      if ((await group.getByRole('radio').count()) > 0) await group.getByRole('radio').first().check()
    await page.getByRole('button', { name: 'Next step' }).click()
    await expect(heading).not.toHaveText(title)
  }
  await drive(raw, HARDNESS)
  const title = (await heading.textContent()) ?? ''
  await exactly(page, 'Hardness at the valve outlet').fill('0.5')
  for (const [text, said] of [
    ['abc', /is not a number/],
    ['', /Measure and type it/],
    ['99', /99 gpg is unusual/],
  ] as const) {
    await raw.fill(text)
    await page.getByRole('button', { name: 'Next step' }).click()
    await expect.poll(() => saidOf(raw)).toMatch(said)
    await expect(heading).toHaveText(title)
  }
  await page.getByLabel('Why it is so: Raw water hardness').fill('brackish well')
  await page.getByRole('button', { name: 'Next step' }).click()
  await expect(heading).not.toHaveText(title)
})
