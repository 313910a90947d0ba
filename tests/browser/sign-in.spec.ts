import { expect, test } from '@playwright/test'
import { DEMO_PEOPLE, signInByForm } from '../support/sign-in.ts'

// Sessions of their own: one changes its firm, the others are ended.
const [, inTwoFirms, , inNoOtherTest] = DEMO_PEOPLE

test('a wrong password says so, keeps the e-mail, and opens nothing', async ({ page }) => {
  await page.goto('/coming-due')
  await expect(page).toHaveURL(/sign-in/)
  await page.getByLabel('Email').fill('owner@larkmoor.example.com')
  await page.getByLabel('Password').fill('not the password')
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
  await expect(page.getByRole('alert').filter({ hasText: 'Wrong email or password' })).toBeVisible()
  await expect(page.getByLabel('Email')).toHaveValue('owner@larkmoor.example.com')
})

test('a person in two firms goes from one to the other, and sees the one only', async ({ page }) => {
  await signInByForm(page, inTwoFirms)
  await page.goto('/sites')
  const account = page.getByRole('banner').getByRole('button', { name: /^Dell Prior/ })
  await expect(account).toContainText('Larkmoor Soft Water')
  await account.click()
  await expect(page.getByText('Larkmoor Soft Water · dispatcher')).toBeVisible()
  await page.getByRole('button', { name: /Go to/ }).click()
  await expect(account).toContainText('Brackwater Softeners')
  await page.goto('/sites')
  await expect(
    page
      .getByRole('table')
      .getByText(/Brackwater|Saltgate/)
      .first(),
  ).toBeVisible()
  await expect(page.getByRole('table').getByText('Nether Lark')).toHaveCount(0)
  await account.click()
  await page.getByRole('button', { name: /Go to Larkmoor/ }).click()
  await expect(account).toContainText('Larkmoor Soft Water')
})

test('a session that is ended elsewhere can do nothing more, and its open page goes to the sign-in', async ({ page, browser }) => {
  await signInByForm(page, inNoOtherTest)
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
  const other = await browser.newContext()
  const second = await other.newPage()
  await signInByForm(second, inNoOtherTest)
  await second.goto('/sessions')
  const rows = second.getByRole('button', { name: 'End session' })
  await expect(rows.first()).toBeVisible()
  while ((await rows.count()) > 0) {
    const before = await rows.count()
    await rows.first().click()
    await expect(rows).toHaveCount(before - 1)
  }
  await expect(page).toHaveURL(/sign-in/, { timeout: 15_000 })
  await other.close()
})

test('every page’s scripts carry its nonce, and an address that cannot be read is a sentence', async ({ page, request }) => {
  const refused: string[] = []
  page.on('console', (message) => {
    if (/Content Security Policy/.test(message.text())) refused.push(message.text())
  })
  const answer = await page.goto('/sign-in')
  const policy = (await answer?.allHeaders())?.['content-security-policy'] ?? ''
  const nonce = /'nonce-([^']+)'/.exec(policy)?.[1]
  const scripts = await page.locator('script').evaluateAll((all) => all.map((one) => (one as HTMLScriptElement).nonce))
  expect(scripts.length).toBeGreaterThan(0)
  expect(new Set(scripts)).toEqual(new Set([nonce]))
  expect((await page.goto('/no-such-page'))?.status()).toBe(404)
  expect(refused).toEqual([])
  for (const path of ['/sites/%ff', '/api/rpc/%ff/x']) {
    const said = await request.get(path)
    expect([said.status(), await said.text()]).toEqual([400, expect.stringContaining('can’t be read')])
  }
})
