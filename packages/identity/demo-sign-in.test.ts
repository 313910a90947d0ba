import { closeClients } from '@almanac/database/client'
import { forgetConfig } from '@almanac/runtime/config'
import { afterAll, afterEach, beforeAll, expect, test, vi } from 'vitest'
import { testDatabase } from '../../tests/support/test-database.ts'
import { auth } from './auth.ts'
import { addPerson } from './people.ts'

const demo = { name: 'Ada Roe', email: 'owner@larkmoor.example.com', password: 'made at set-up, in a test' }
const other = { ...demo, email: 'owner@softwater.example' }

beforeAll(async () => {
  await testDatabase()
  await addPerson(demo)
  await addPerson(other)
})
afterEach(() => {
  vi.unstubAllEnvs()
  forgetConfig()
})
afterAll(() => closeClients())

const signIn = ({ email, password }: typeof demo) => auth().api.signInEmail({ body: { email, password } })
function serveAt(settings: { HOST?: string; PUBLIC_URL?: string }) {
  for (const [name, value] of Object.entries(settings)) vi.stubEnv(name, value)
  forgetConfig()
}

test.each([{}, { HOST: '::1' }, { HOST: 'localhost', PUBLIC_URL: 'http://127.0.0.1:4000' }, { PUBLIC_URL: 'http://almanac.localhost' }])(
  'on this machine, as %j, the demo’s people sign in',
  async (settings) => {
    serveAt(settings)
    await expect(signIn(demo)).resolves.toMatchObject({ user: { email: demo.email } })
  },
)

test.each([
  { HOST: '0.0.0.0' },
  { HOST: '::' },
  { HOST: '10.0.0.7' },
  { PUBLIC_URL: 'https://almanac.softwater.example' },
  { PUBLIC_URL: 'https://localhost.softwater.example' },
])('served to others, as %j, they are refused with a sentence, right password or not, and everyone else signs in', async (settings) => {
  serveAt(settings)
  for (const person of [demo, { ...demo, password: 'not the password' }, { ...demo, email: 'OWNER@larkmoor.EXAMPLE.com' }])
    await expect(signIn(person)).rejects.toMatchObject({
      statusCode: 403,
      body: { code: 'DEMO_ELSEWHERE', message: expect.stringContaining('can’t sign in here') },
    })
  await expect(signIn(other)).resolves.toMatchObject({ user: { email: other.email } })
})
