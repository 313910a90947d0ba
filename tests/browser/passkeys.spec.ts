import { expect, type Page, test } from '@playwright/test'
import { DEMO_PEOPLE, signInByForm } from '../support/sign-in.ts'

// Sessions of their own: this one signs out.
const [, , , person] = DEMO_PEOPLE

/** A device of the browser's own that keeps passkeys and asks for its owner's finger (WebDriver: W3C Web Authentication, section 11). */
async function withDevice(page: Page, verified = true) {
  const session = await page.context().newCDPSession(page)
  await session.send('WebAuthn.enable')
  const { authenticatorId } = await session.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      ...{ protocol: 'ctap2', transport: 'internal', hasResidentKey: true, hasUserVerification: true },
      ...{ isUserVerified: verified, automaticPresenceSimulation: true },
    },
  })
  const kept = async () => (await session.send('WebAuthn.getCredentials', { authenticatorId })).credentials
  return { kept, verify: (now: boolean) => session.send('WebAuthn.setUserVerified', { authenticatorId, isUserVerified: now }) }
}

async function signOut(page: Page) {
  await page
    .getByRole('banner')
    .getByRole('button', { name: new RegExp(person.name) })
    .click()
  await page.getByRole('button', { name: 'Sign out' }).click()
  await expect(page).toHaveURL(/sign-in/)
}

test('a passkey is added, signs in without a password, is removed, and is refused', async ({ page }) => {
  test.setTimeout(120_000)
  const device = await withDevice(page)
  await signInByForm(page, person)
  await page.goto('/sessions')
  const part = page.locator('section').filter({ has: page.getByRole('heading', { name: 'Passkeys' }) })
  const password = part.getByLabel('Password, to add a passkey')
  await expect(part.getByText('You have no passkey')).toBeVisible()

  await password.fill('not the password')
  await part.getByRole('button', { name: 'Add a passkey' }).click()
  await expect(part.getByRole('alert').filter({ hasText: 'The present password is wrong' })).toBeVisible()
  expect(await device.kept()).toHaveLength(0)

  await password.fill(person.password)
  await part.getByRole('button', { name: 'Add a passkey' }).click()
  await expect(part.getByText('Passkey added.')).toBeVisible()
  await expect(part.getByRole('listitem')).toHaveText(/^Computer, .*added today .*never used yet/)
  expect(await device.kept()).toMatchObject([{ isResidentCredential: true, rpId: new URL(page.url()).hostname }])

  await password.fill(person.password)
  await part.getByRole('button', { name: 'Add a passkey' }).click()
  await expect(part.getByText('This device has a passkey of yours already.')).toBeVisible()

  await signOut(page)
  await page.getByRole('button', { name: 'Sign in with a passkey' }).press('Enter')
  await expect(page).not.toHaveURL(/sign-in/)
  await page.goto('/sessions')
  await expect(part.getByRole('listitem')).toHaveText(/last signed you in today/)

  await signOut(page)
  await device.verify(false)
  await page.getByRole('button', { name: 'Sign in with a passkey' }).click()
  await expect(page.getByRole('alert').filter({ hasText: 'Your device didn’t sign you in' })).toBeVisible()
  await device.verify(true)
  await page.getByRole('button', { name: 'Sign in with a passkey' }).click()
  await expect(page).not.toHaveURL(/sign-in/)

  await page.goto('/sessions')
  await part.getByRole('button', { name: 'Remove passkey' }).click()
  await expect(part.getByText('You have no passkey')).toBeVisible()
  await signOut(page)
  await page.getByRole('button', { name: 'Sign in with a passkey' }).click()
  await expect(page.getByRole('alert').filter({ hasText: 'This passkey isn’t known here' })).toBeVisible()
  await expect(page).toHaveURL(/sign-in/)
})
