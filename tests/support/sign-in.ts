import { expect, type Page } from '@playwright/test'
import { DEMO_SIGN_INS } from '../../prisma/demo/sign-ins.ts'

export type DemoRole = 'owner' | 'dispatcher' | 'technician'

/** Signs in as one of the demo's people, through the form as they would. */
export async function signIn(page: Page, role: DemoRole): Promise<void> {
  const person = DEMO_SIGN_INS.find((one) => one.role === role)
  if (!person) throw new Error(`the demo has no ${role}`)
  await page.goto('/sign-in')
  await page.getByLabel('E-mail').fill(person.email)
  await page.getByLabel('Password').fill(person.password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await expect(page).not.toHaveURL(/sign-in/)
}
