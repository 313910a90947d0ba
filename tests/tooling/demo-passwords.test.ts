import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { auth } from '@almanac/identity/auth'
import { addPerson } from '@almanac/identity/people'
import { afterAll, afterEach, expect, test, vi } from 'vitest'
import { DEMO_SIGN_INS } from '../../prisma/demo/sign-ins.ts'
import { testDatabase } from '../support/test-database.ts'

// Plain JavaScript, without types of its own.
const { demoSignIns, wantsDemo } = await import(new URL('../../scripts/support/load-demo.mjs', import.meta.url).href)

const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'almanac-demo-'))
afterAll(() => fs.rmSync(folder, { recursive: true, force: true }))
afterEach(() => vi.unstubAllEnvs())

test.each([
  [undefined, true, true],
  [undefined, false, false],
  ['off', true, false],
  ['on', false, true],
])('with DEMO=%s and an embedded database (%s), the demo is wanted: %s', (setting, embedded, wanted) => {
  vi.stubEnv('DEMO', setting)
  expect(wantsDemo({ embedded })).toBe(wanted)
})

test('another word for DEMO is refused', () => {
  vi.stubEnv('DEMO', 'yes')
  expect(() => wantsDemo({ embedded: true })).toThrow('DEMO must be on or off')
})

test('each of the demo’s people has a password made at set-up, kept for its owner’s eyes, and made anew where the file is not', async () => {
  const { identityUrl } = await testDatabase()
  const environment = { urls: { IDENTITY_DATABASE_URL: identityUrl }, env: {} }
  const file = path.join(folder, 'demo-passwords.json')
  const [first] = DEMO_SIGN_INS
  expect(await demoSignIns(environment, file)).toEqual([])
  await addPerson({ ...first, password: 'larkmoor-owner' }) // as an earlier release loaded it
  const signsIn = (password: string) =>
    auth()
      .api.signInEmail({ body: { email: first.email, password } })
      .then(
        () => true,
        () => false,
      )

  const [made] = await demoSignIns(environment, file)
  expect(made).toMatchObject(first)
  expect(made?.password).toMatch(/^[\w-]{16}$/)
  expect(await signsIn('larkmoor-owner')).toBe(false)
  expect(await signsIn(made?.password ?? '')).toBe(true)
  expect(fs.statSync(file).mode & 0o777).toBe(0o600)
  expect(await demoSignIns(environment, file)).toEqual([made])

  fs.rmSync(file)
  const [anew] = await demoSignIns(environment, file)
  expect(await signsIn(made?.password ?? '')).toBe(false)
  expect(await signsIn(anew?.password ?? '')).toBe(true)
})
