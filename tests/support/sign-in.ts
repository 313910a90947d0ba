import { type Cookie, expect, type Page } from '@playwright/test'
import type { DEMO_SIGN_INS } from '../../prisma/demo/sign-ins.ts'

export type DemoRole = 'owner' | 'dispatcher' | 'technician'
type Person = (typeof DEMO_SIGN_INS)[number] & { password: string }

/** The demo's people with the passwords that this run's set-up made. */
export const DEMO_PEOPLE = JSON.parse(process.env.DEMO_SIGN_INS ?? '[]') as [Person, Person, Person, Person]

/** Signs in through the form, as a person would: a session of one's own, which a test may end. */
export async function signInByForm(page: Page, person: Pick<Person, 'email' | 'password'>): Promise<void> {
  await page.goto('/sign-in')
  await page.getByLabel('Email').fill(person.email)
  await page.getByLabel('Password').fill(person.password)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
  await expect(page).not.toHaveURL(/sign-in/, { timeout: 30_000 }) // the first one wakes the server
}

const kept = new Map<DemoRole, Cookie[]>()

/** Opens the first page of one of the demo's people. The form is filled once in a run, and the session shared by the tests that end none. */
export async function signIn(page: Page, role: DemoRole): Promise<void> {
  const cookies = kept.get(role)
  if (cookies) {
    await page.context().addCookies(cookies)
    await page.goto('/')
    await expect(page).not.toHaveURL(/sign-in/)
    return
  }
  const person = DEMO_PEOPLE.find((one) => one.role === role)
  if (!person) throw new Error(`the demo has no ${role}`)
  await signInByForm(page, person)
  kept.set(role, await page.context().cookies())
}
