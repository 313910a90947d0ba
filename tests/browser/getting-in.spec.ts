import { expect, test } from '@playwright/test'
import { expectAccessible } from '../support/accessible.ts'
import { invite, join, PASSWORD, press, setUp, setUpLink, typeAndGoOn } from '../support/own-company.ts'
import { totpCode } from '../support/totp.ts'

/** What an empty list offers first. */
const NEXT_ACTS = [
  ['/sites', 'Import your customer list'],
  ['/jobs', 'Import your customer list'],
  ['/ask-next', 'Import your customer list'],
  ['/reminders', 'Import your customer list'],
  ['/reminders?view=held', 'See what is waiting'],
  ['/reminders?view=outbox', 'See what is waiting'],
  ['/track-record', 'Import your customer list'],
  ['/policy', 'Import your customer list'],
  ['/imports', 'Import a file'],
  ['/water', 'Add a supply'],
  ['/crews', 'Invite someone'],
  ['/day-sheets', 'Add people and vehicles'],
  ['/week', 'Add a site'],
  ['/day-sheets/plan', 'Open the day sheets'],
  ['/jobs/new', 'Choose a site'],
  ['/water/tests/new', 'Choose a site'],
] as const

test('two people join on browsers of their own; the owner demotes one, whose open page ends within a second, and ends the other’s access', async ({
  page,
  browser,
}) => {
  test.slow()
  await setUp(page, 'Weir Road Water', { name: 'Maeve Weir', email: 'maeve@weirroad.example' })
  await page.goto('/crews')
  await expect(page.getByRole('heading', { level: 1, name: 'People and vehicles' })).toBeVisible()
  const [toDell, toTomas] = [await invite(page, 'Dell Brook', 'dispatcher'), await invite(page, 'Tomas Lund', 'technician')]
  await expect(page.getByText('Invited: Dell Brook, dispatcher')).toBeVisible()
  const dell = await join(browser, 'Weir Road Water', toDell, 'dell@weirroad.example')
  const tomas = await join(browser, 'Weir Road Water', toTomas, 'tomas@weirroad.example')
  await expect(dell).toHaveURL(/day-sheets/)
  await expect(tomas).toHaveURL(/today/)
  // The owner's page shows both without being loaded again, with a device in words.
  await expect(page.getByText('dell@weirroad.example')).toBeVisible()
  await expect(page.getByText('Invited:')).toHaveCount(0)
  await expect(page.getByText(/Signed in: Computer, Chrome/).first()).toBeVisible()
  await tomas.goto(toDell)
  await expect(tomas.getByRole('heading', { name: 'This link doesn’t work' })).toBeVisible()
  await tomas.goto('/today')
  await expect(tomas.getByRole('heading', { level: 1 })).toBeVisible()

  await dell.goto('/crews')
  await expect(dell.getByRole('button', { name: 'Add to day sheets' })).toBeVisible()
  await expect(dell.getByRole('button', { name: 'Invite someone' })).toHaveCount(0)
  await press(page, 'Sign-in of Dell Brook')
  await page.getByRole('radio', { name: /^technician/i }).focus()
  await page.keyboard.press('Space')
  // Loading again is what ends the open page: when that began, by the browser's own clock.
  const reloaded = dell.waitForRequest((request) => request.isNavigationRequest() && request.url().endsWith('/crews'), { timeout: 20_000 })
  const saved = page.waitForResponse((response) => response.url().includes('/people/changeRole'))
  await press(page, 'Save')
  await saved
  const begun = performance.now()
  await reloaded
  expect(performance.now() - begun).toBeLessThan(1000)
  await expect(dell.getByRole('button', { name: 'Add to day sheets' })).toHaveCount(0)

  await press(page, 'Sign-in of Tomas Lund')
  await press(page, 'End access')
  await press(page, 'End access')
  await expect(tomas).toHaveURL(/sign-in/, { timeout: 10_000 })
  await tomas.goto('/today')
  await expect(tomas).toHaveURL(/sign-in/)
  // Nor does the last owner leave.
  await press(page, 'Sign-in of Maeve Weir')
  await press(page, 'End access')
  await press(page, 'End access')
  await expect(page.getByRole('alert').filter({ hasText: 'needs an owner' })).toBeVisible()
})

test('a second step is turned on with an app’s code, and asked for at the next sign-in, by keyboard', async ({ page, browser }) => {
  test.slow()
  await setUp(page, 'Lantern Road Water', { name: 'Ada Lantern', email: 'ada@lanternroad.example' })
  await page.goto('/firm')
  await expect(page.getByRole('heading', { level: 2 }).first()).toHaveText('Company details')
  await page.goto('/sessions')
  await page.getByLabel('Your password').focus()
  await page.keyboard.type(PASSWORD)
  await page.keyboard.press('Enter')
  const key = (await page.locator('[data-secret]').textContent()) ?? ''
  await expect(page.getByRole('img', { name: /QR code/ })).toBeVisible()
  await page.getByLabel(/code that your app shows/).focus()
  // The answer, with the new session in it, comes late: the page hears before that the old one has ended, and waits for it.
  await page.route('**/two-factor/verify-totp', async (route) => {
    const response = await route.fetch()
    await new Promise((later) => setTimeout(later, 1500))
    await route.fulfill({ response })
  })
  await page.keyboard.type(totpCode(key, Date.now()))
  await page.keyboard.press('Enter')
  await expect(page.getByText('After your password you enter the code')).toBeVisible({ timeout: 20_000 })
  const elsewhere = await (await browser.newContext()).newPage()
  await elsewhere.goto('/sign-in')
  await elsewhere.getByLabel('Email').fill('ada@lanternroad.example')
  await elsewhere.getByLabel('Password').fill(PASSWORD)
  await elsewhere.keyboard.press('Enter')
  await expect(elsewhere.getByLabel('Code')).toBeVisible()
  await expectAccessible(elsewhere, 'the second step')
  await elsewhere.getByLabel('Code').focus()
  await elsewhere.keyboard.type('000000')
  await elsewhere.keyboard.press('Enter')
  await expect(elsewhere.getByRole('alert').filter({ hasText: 'not right' })).toBeVisible()
  await elsewhere.getByLabel('Code').fill(totpCode(key, Date.now()))
  await elsewhere.keyboard.press('Enter')
  await expect(elsewhere).toHaveURL(/coming-due/, { timeout: 30_000 })
})

test('a company is set up by the host’s link, by keyboard, and its owner is at the way to bring the list in', async ({ page }) => {
  test.slow()
  const link = setUpLink()
  await page.goto(link)
  await expect(page.getByRole('heading', { level: 1, name: 'Set up your company' })).toBeVisible()
  await expectAccessible(page, 'the set-up link')
  // en-US by the browser: what follows from the country stands there, and can be changed.
  await expect(page.getByLabel('Country')).toHaveValue('US')
  await expect(page.getByLabel('Currency')).toHaveValue('USD')
  await page.getByLabel('Country').selectOption({ label: 'Ireland' })
  await expect(page.getByLabel('Units')).toHaveValue('metric')
  await expect(page.getByLabel('Currency')).toHaveValue('EUR')
  await expect(page.getByLabel('Paper')).toHaveValue('a4')
  await page.getByLabel('Country').selectOption({ label: 'United States' })
  await page.getByLabel('Company name').focus()
  await typeAndGoOn(page, 'Tidewell Soft Water')
  await typeAndGoOn(page, '(630) 555-0142')
  await page.getByLabel('Your name').focus()
  await typeAndGoOn(page, 'Ines Roth')
  await typeAndGoOn(page, 'ines@tidewell.example')
  await page.keyboard.type('password123')
  await page.keyboard.press('Enter')
  await expect(page.getByRole('alert').filter({ hasText: 'easy to guess' })).toBeVisible()
  await page.getByLabel('Password').fill(PASSWORD)
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/coming-due/, { timeout: 30_000 })
  await expect(page.getByRole('link', { name: 'Import your customer list' })).toBeVisible()
  await page.getByRole('button', { name: /^Ines Roth/ }).click()
  await expect(page.getByText('Tidewell Soft Water · owner')).toBeVisible()
  await page.keyboard.press('Escape')
  // A company with nothing in it: each list leads to the next useful act.
  for (const [path, act] of NEXT_ACTS) {
    await page.goto(path)
    await expect(
      page
        .getByRole('main')
        .getByRole('link', { name: act })
        .or(page.getByRole('main').getByRole('button', { name: act }))
        .first(),
      path,
    ).toBeVisible()
  }
  await page.goto(link)
  await expect(page.getByRole('heading', { name: 'This link doesn’t work' })).toBeVisible()
})
