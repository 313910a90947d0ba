import { execFileSync } from 'node:child_process'
import { type Browser, expect, type Page } from '@playwright/test'

/** A password that nobody guesses; of everybody in a company of a test's own. */
export const PASSWORD = 'weir gravel lantern under'

/** What whoever runs the server does for one more company: the command prints the link. */
export function setUpLink(): string {
  const said = execFileSync('node', ['scripts/run.mjs', 'set-up-link'], { encoding: 'utf8' })
  const link = /http:\S+\/set-up\/\S+/.exec(said)?.[0]
  if (!link) throw new Error(`no link in: ${said}`)
  return link
}

/** Sets a company up by a new link; its owner is at the first page then. */
export async function setUp(page: Page, company: string, owner: { name: string; email: string }): Promise<void> {
  await page.goto(setUpLink())
  await page.getByLabel('Company name').fill(company)
  await page.getByLabel('Your name').fill(owner.name)
  await page.getByLabel('Email').fill(owner.email)
  await page.getByLabel('Password').fill(PASSWORD)
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/coming-due/, { timeout: 30_000 })
}

/** Types into the field that has the focus, and goes on to the next. */
export async function typeAndGoOn(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text)
  await page.keyboard.press('Tab')
}

/** Chooses a button by its name, by keyboard. */
export async function press(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name }).focus()
  await page.keyboard.press('Enter')
}

/** Invites someone from the people's page by keyboard; answers the link to hand over. */
export async function invite(page: Page, name: string, role: 'dispatcher' | 'technician'): Promise<string> {
  await press(page, 'Invite someone')
  const form = page.getByRole('dialog', { name: 'Invite someone' })
  await form.getByLabel('Name', { exact: true }).focus()
  await page.keyboard.type(name)
  await form.getByRole('radio', { name: new RegExp(`^${role}`, 'i') }).focus()
  await page.keyboard.press('Space')
  await press(page, 'Make the link')
  const link = await page
    .getByRole('dialog', { name: `Invitation for ${name}` })
    .getByLabel('Link')
    .inputValue()
  await press(page, 'Finish')
  return link
}

/** Joins by a link on a browser of one's own. */
export async function join(browser: Browser, company: string, link: string, email: string): Promise<Page> {
  const page = await (await browser.newContext()).newPage()
  await page.goto(link)
  await expect(page.getByRole('heading', { name: `Join ${company}` })).toBeVisible()
  await page.getByLabel('Email').focus()
  await typeAndGoOn(page, email)
  await page.keyboard.type(PASSWORD)
  await page.keyboard.press('Enter')
  await expect(page).not.toHaveURL(/join/, { timeout: 30_000 })
  return page
}
